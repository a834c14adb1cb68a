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

function halo(points, colour) {
  const result = line(points, colour, false, 9);
  result.material.transparent = true;
  result.material.opacity = 0.4;
  result.renderOrder = -1;
  return result;
}

// A wire whose colour and width follow a share from 0 to 1 along it.
function graded(points, shares, ramp) {
  const result = line(points, ramp[0], false, 1.5 + 5 * Math.max(...shares));
  result.geometry.setColors(shares.flatMap(s => {
    const c = ramp[Math.min(ramp.length - 1, Math.floor(s * ramp.length))];
    return [c.r, c.g, c.b];
  }));
  result.material.vertexColors = true;
  result.material.color.set(0xffffff);
  return result;
}

function block(at, size, colour) {
  const mesh = new THREE.Mesh(new THREE.BoxGeometry(size, size, size), new THREE.MeshLambertMaterial({ color: colour }));
  mesh.position.set(at[0], at[2], -at[1]);
  return mesh;
}

// What is easier to hit than it is to see.
function target(points, radius) {
  const mesh = tube(points, radius, 0xffffff);
  mesh.visible = true;
  mesh.material.transparent = true;
  mesh.material.opacity = 0;
  mesh.material.depthWrite = false;
  return mesh;
}

function fill(state, data) {
  const { group, element } = state;
  for (const child of [...group.children]) {
    group.remove(child);
    child.geometry?.dispose();
    child.material?.dispose();
  }
  state.parts = [];
  const part = (id, thing, hit) => {
    group.add(thing);
    if (id) {
      const to = hit ?? thing;
      if (hit) {
        group.add(hit);
      }
      to.userData.id = id;
      state.parts.push(to);
    }
    return thing;
  };

  const faint = ink(element, "--line");
  const strong = ink(element, "--ink");
  const accent = ink(element, "--accent");
  const grades = [0, 1, 2, 3].map(g => ink(element, "--use" + g));
  const ramp = [0, 1, 2, 3, 4].map(g => ink(element, "--c" + g));
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
    part(r.id, line(r.points, faint, false));
  }
  const fat = Math.max(0.5, reach / 60);
  for (const m of data.masts) {
    group.add(line(m.rest, faint, true));
    part(m.id, tube(m.bent, m.radiusM, strong), target(m.rest, fat));
    part(m.footId, block(m.rest[0], fat * 1.4, strong));
    if (data.picked === m.id) {
      group.add(halo(m.bent, accent));
    }
  }
  for (const a of data.anchors) {
    part(a.id, block(a.at, fat * (data.picked === a.id ? 2 : 1.2), data.picked === a.id ? accent : strong));
  }
  for (const t of data.topWires) {
    part(t.id, line(t.points, strong, false, 2));
  }
  const byCurrent = data.wires?.length > 0;
  for (const g of data.guys) {
    part(g.id, line(g.points, byCurrent ? faint : grades[g.grade], !byCurrent && g.grade >= 2, g.grade === 0 || byCurrent ? 2 : 3));
    if (data.picked === g.id) {
      group.add(halo(g.points, accent));
    }
  }
  for (const w of data.wires ?? []) {
    part(w.id, graded(w.points, w.shares, ramp));
  }
  if (data.wind) {
    const to = new THREE.Vector3(data.wind[0], 0, -data.wind[1]).normalize();
    const from = to.clone().multiplyScalar(-reach).add(new THREE.Vector3(0, data.heightM * 0.6, 0));
    const arrow = new THREE.ArrowHelper(to, from, reach * 0.4, accent, reach * 0.08, reach * 0.04);
    group.add(arrow);
  }
  state.draw();
}

// The gain in every direction above the ground: distance from the middle and shade both tell it, in decibels below the strongest.
function pattern(state, data) {
  const { group, element } = state;
  for (const child of [...group.children]) {
    group.remove(child);
    child.geometry?.dispose();
    child.material?.dispose();
  }
  state.parts = [];
  const faint = ink(element, "--line");
  const ramp = [0, 1, 2, 3, 4].map(g => ink(element, "--p" + g));
  const share = db => Math.max(0, 1 + (db - data.most) / data.floorDb);
  const rows = data.dbi.length, columns = data.dbi[0].length;
  const points = [], colours = [], faces = [];
  for (let e = 0; e < rows; e++) {
    for (let a = 0; a < columns; a++) {
      const r = 10 * share(data.dbi[e][a]);
      const [el, az] = [e * Math.PI / 2 / (rows - 1), a * 2 * Math.PI / columns];
      points.push(r * Math.cos(el) * Math.sin(az), r * Math.sin(el), -r * Math.cos(el) * Math.cos(az));
      const c = ramp[Math.min(4, Math.floor(share(data.dbi[e][a]) * 5))];
      colours.push(c.r, c.g, c.b);
      if (e + 1 < rows) {
        const b = (a + 1) % columns;
        faces.push(e * columns + a, e * columns + b, (e + 1) * columns + a, e * columns + b, (e + 1) * columns + b, (e + 1) * columns + a);
      }
    }
  }
  const geometry = new THREE.BufferGeometry();
  geometry.setAttribute("position", new THREE.Float32BufferAttribute(points, 3));
  geometry.setAttribute("color", new THREE.Float32BufferAttribute(colours, 3));
  geometry.setIndex(faces);
  geometry.computeVertexNormals();
  const surface = new THREE.Mesh(geometry, new THREE.MeshLambertMaterial({ vertexColors: true, side: THREE.DoubleSide }));
  group.add(surface);
  state.surface = surface;
  const at = (e, a) => {
    const k = 3 * (e * columns + (a + columns) % columns);
    return [points[k] * 1.003, -points[k + 2] * 1.003, points[k + 1] * 1.003 + 0.01];
  };
  const net = ink(element, "--ink-soft");
  for (let e = 0; e < rows - 1; e += 5) {
    group.add(line(Array.from({ length: columns + 1 }, (_, a) => at(e, a)), net, false, 0.8));
  }
  for (let a = 0; a < columns; a += 6) {
    group.add(line(Array.from({ length: rows }, (_, e) => at(e, a)), net, false, 0.8));
  }
  for (const db of [0, -10, -20]) {
    group.add(ring(10 * Math.max(0, 1 + db / data.floorDb), [0, 0], faint, db < 0, 1.5));
  }
  group.add(line([[0, 0, 0.02], [0, 11, 0.02]], ink(element, "--accent"), false, 2));
  state.draw();
}

function ray(state, e, things) {
  const box = state.renderer.domElement.getBoundingClientRect();
  const caster = new THREE.Raycaster();
  caster.params.Line2 = { threshold: 10 };
  caster.setFromCamera(new THREE.Vector2((e.clientX - box.left) / box.width * 2 - 1, 1 - (e.clientY - box.top) / box.height * 2), state.camera);
  return caster.intersectObjects(things, false)[0];
}

// A click that did not turn the scene picks the part under it.
function listen(state) {
  const canvas = state.renderer.domElement;
  let from = null;
  canvas.addEventListener("pointerdown", e => {
    from = [e.clientX, e.clientY];
  });
  canvas.addEventListener("pointerup", e => {
    if (from && Math.hypot(e.clientX - from[0], e.clientY - from[1]) < 5 && state.page && state.parts?.length) {
      const hit = ray(state, e, state.parts);
      if (hit) {
        state.page.invokeMethodAsync("Picked", hit.object.userData.id);
      }
    }
    from = null;
  });
  canvas.addEventListener("pointermove", e => {
    if (!e.buttons && state.surface) {
      const hit = ray(state, e, [state.surface]);
      if (hit) {
        const p = hit.point;
        const elevation = Math.atan2(p.y, Math.hypot(p.x, p.z)), bearing = (Math.atan2(p.x, -p.z) + 2 * Math.PI) % (2 * Math.PI);
        const { dbi } = state.data;
        const row = Math.round(elevation / (Math.PI / 2) * (dbi.length - 1)), column = Math.round(bearing / (2 * Math.PI) * dbi[0].length) % dbi[0].length;
        window.mastwright.tipAt(`${dbi[row][column].toFixed(1).replace("-", "\u2212")} dBi`, [`bearing ${Math.round(column * 360 / dbi[0].length)}°`, `${Math.round(row * 90 / (dbi.length - 1))}° above the horizon`], e.clientX, e.clientY);
      } else {
        window.mastwright.tipAt(null);
      }
    } else if (!e.buttons && state.parts?.length) {
      canvas.style.cursor = ray(state, e, state.parts) ? "pointer" : "grab";
    }
  });
  canvas.addEventListener("pointerleave", () => state.surface && window.mastwright.tipAt(null));
}

function show(element, data, page) {
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
    const themes = new MutationObserver(() => state.data && paint(state, state.data));
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    state = { element, renderer, scene, group, camera, controls, draw, size, watcher, themes };
    scenes.set(element, state);
    state.page = page;
    listen(state);
    home(state, data);
  } else if (state.data && (state.data.heightM !== data.heightM || state.data.reachM !== data.reachM)) {
    home(state, data);
  }
  state.data = data;
  state.size();
  paint(state, data);
  return true;
}

function paint(state, data) {
  if (data.dbi) {
    pattern(state, data);
  } else {
    fill(state, data);
  }
}

function home(state, data) {
  if (data.dbi) {
    state.camera.position.set(19, 15, 26);
    state.controls.target.set(0, 3, 0);
    state.controls.update();
    return;
  }
  const far = 2.25 * Math.max(data.heightM, data.reachM * 1.1);
  state.camera.position.set(far * 0.62, data.heightM * 0.9, far * 0.78);
  state.controls.target.set(0, data.heightM * 0.36, 0);
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
    show: (data, page) => !element || show(element, data, page),
    turn: degrees => element && turn(element, degrees),
    drop: () => element && drop(element),
  };
}
