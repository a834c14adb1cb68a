// The station in space: true to scale, deflection exaggerated by the factor the page states.
import * as THREE from "three";
import { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
import { Line2 } from "three/examples/jsm/lines/Line2.js";
import { LineGeometry } from "three/examples/jsm/lines/LineGeometry.js";
import { LineMaterial } from "three/examples/jsm/lines/LineMaterial.js";

const scenes = new WeakMap();

// The page's own colours, so that light and dark follow the style sheet.
function ink(element, name) {
  return new THREE.Color(getComputedStyle(element).getPropertyValue(name).trim() || "#888");
}

function line(points, colour, dashed, width) {
  const geometry = new LineGeometry();
  geometry.setPositions(points.flatMap(p => [p[0], p[2], -p[1]]));
  const material = new LineMaterial({ color: colour, linewidth: width ?? 1, dashed: !!dashed, dashSize: 0.8, gapSize: 0.5 });
  const result = new Line2(geometry, material);
  result.computeLineDistances();
  return result;
}

function tube(points, radius, colour) {
  const curve = new THREE.CatmullRomCurve3(points.map(p => new THREE.Vector3(p[0], p[2], -p[1])));
  const geometry = new THREE.TubeGeometry(curve, Math.max(8, points.length * 3), radius, 8);
  return new THREE.Mesh(geometry, new THREE.MeshLambertMaterial({ color: colour }));
}

function ring(radius, centre, colour, dashed, width) {
  const points = [];
  for (let i = 0; i <= 96; i++) {
    const a = i * Math.PI / 48;
    points.push([centre[0] + radius * Math.sin(a), centre[1] + radius * Math.cos(a), 0.02]);
  }
  return line(points, colour, dashed, width);
}

function fill(state, data) {
  const { group, element } = state;
  for (const child of [...group.children]) {
    group.remove(child);
    child.geometry?.dispose();
    child.material?.dispose();
  }

  const faint = ink(element, "--line");
  const strong = ink(element, "--ink");
  const accent = ink(element, "--accent");
  const grades = [0, 1, 2, 3].map(g => ink(element, "--use" + g));
  const reach = data.reachM;
  const step = reach > 60 ? 20 : reach > 25 ? 10 : 5;
  for (let r = step; r <= reach; r += step) {
    group.add(ring(r, [0, 0], faint, false));
  }
  group.add(line([[0, 0, 0.01], [0, reach, 0.01]], faint, false));
  for (const f of data.fall) {
    group.add(ring(f.radiusM, f.centre, accent, true, 2));
  }
  for (const r of data.radials) {
    group.add(line(r, faint, false));
  }
  for (const m of data.masts) {
    group.add(line(m.rest, faint, true));
    group.add(tube(m.bent, m.radiusM, strong));
  }
  for (const t of data.topWires) {
    group.add(line(t, strong, false, 2));
  }
  for (const g of data.guys) {
    group.add(line(g.points, grades[g.grade], g.grade >= 2, g.grade === 0 ? 2 : 3));
  }
  if (data.wind) {
    const to = new THREE.Vector3(data.wind[0], 0, -data.wind[1]).normalize();
    const from = to.clone().multiplyScalar(-reach).add(new THREE.Vector3(0, data.heightM * 0.6, 0));
    const arrow = new THREE.ArrowHelper(to, from, reach * 0.4, accent, reach * 0.08, reach * 0.04);
    group.add(arrow);
  }
  state.draw();
}

function show(element, data) {
  let state = scenes.get(element);
  if (!state) {
    let renderer;
    try {
      renderer = new THREE.WebGLRenderer({ antialias: true, alpha: true, preserveDrawingBuffer: true });
    } catch {
      return false;
    }
    renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    element.replaceChildren(renderer.domElement);
    renderer.domElement.setAttribute("aria-hidden", "true");
    const scene = new THREE.Scene();
    scene.add(new THREE.AmbientLight(0xffffff, 2.2));
    const sun = new THREE.DirectionalLight(0xffffff, 1.4);
    sun.position.set(30, 60, 20);
    scene.add(sun);
    const group = new THREE.Group();
    scene.add(group);
    const camera = new THREE.PerspectiveCamera(32, 1, 0.5, 4000);
    const controls = new OrbitControls(camera, renderer.domElement);
    controls.enableDamping = false;
    controls.maxPolarAngle = Math.PI / 2 - 0.01;
    const draw = () => renderer.render(scene, camera);
    controls.addEventListener("change", draw);
    const size = () => {
      const w = element.clientWidth, h = element.clientHeight;
      if (w > 0 && h > 0) {
        renderer.setSize(w, h);
        camera.aspect = w / h;
        camera.updateProjectionMatrix();
        draw();
      }
    };
    const watcher = new ResizeObserver(size);
    watcher.observe(element);
    // Light or dark may change while the page stands.
    const themes = new MutationObserver(() => state.data && fill(state, state.data));
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    state = { element, renderer, scene, group, camera, controls, draw, size, watcher, themes };
    scenes.set(element, state);
    home(state, data);
  } else if (state.data && (state.data.heightM !== data.heightM || state.data.reachM !== data.reachM)) {
    home(state, data);
  }
  state.data = data;
  state.size();
  fill(state, data);
  return true;
}

function home(state, data) {
  const far = 2.1 * Math.max(data.heightM, data.reachM * 1.1);
  state.camera.position.set(far * 0.62, data.heightM * 0.75, far * 0.78);
  state.controls.target.set(0, data.heightM * 0.42, 0);
  state.controls.update();
}

function turn(element, degrees) {
  const state = scenes.get(element);
  if (!state) {
    return;
  }
  const offset = state.camera.position.clone().sub(state.controls.target);
  offset.applyAxisAngle(new THREE.Vector3(0, 1, 0), degrees * Math.PI / 180);
  state.camera.position.copy(state.controls.target).add(offset);
  state.controls.update();
  state.draw();
}

function drop(element) {
  const state = scenes.get(element);
  if (state) {
    state.watcher.disconnect();
    state.themes.disconnect();
    state.controls.dispose();
    state.renderer.dispose();
    scenes.delete(element);
  }
}

// A handle for one stage. The page may have moved on before it is asked for: then there is nothing to draw on.
export function open(element) {
  return {
    show: data => !element || show(element, data),
    turn: degrees => element && turn(element, degrees),
    drop: () => element && drop(element),
  };
}
