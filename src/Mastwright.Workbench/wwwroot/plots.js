// Values of a plot under the pointer or by the arrow keys, and saving of pictures and tables.
(() => {
  const near = 48;
  const styles = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-linejoin", "opacity", "font-family", "font-size", "font-weight", "font-style", "text-anchor", "display", "paint-order"];
  let tip = null;
  let mark = null;
  let open = null;

  const make = () => {
    tip = document.createElement("div");
    tip.className = "plottip";
    tip.setAttribute("role", "status");
    tip.hidden = true;
    mark = document.createElement("div");
    mark.className = "plotmark";
    mark.setAttribute("aria-hidden", "true");
    mark.hidden = true;
    document.body.append(tip, mark);
  };

  const hide = () => {
    if (tip && open) {
      tip.hidden = mark.hidden = true;
      open = null;
    }
  };

  const dataOf = box => {
    if (box.plotText !== box.dataset.plot) {
      box.plotText = box.dataset.plot;
      box.plotData = JSON.parse(box.dataset.plot);
    }
    return box.plotData;
  };

  // From the drawing's own units to the window: the drawing is shown whole and centred.
  const placeOf = (box, data) => {
    const shown = box.querySelector("svg, img").getBoundingClientRect();
    const [left, top, width, height] = data.v;
    const scale = Math.min(shown.width / width, shown.height / height);
    const x0 = shown.left + (shown.width - width * scale) / 2;
    const y0 = shown.top + (shown.height - height * scale) / 2;
    return p => [x0 + (p[2] - left) * scale, y0 + (p[3] - top) * scale];
  };

  const digits = value => value === 0 ? "0" : Math.abs(value) >= 1e5 || Math.abs(value) < 1e-3 ? value.toExponential(2).replace("e", " × 10^").replace("+", "") : String(Number(value.toPrecision(4)));

  // "frequency, MHz" and 3.65 read "frequency 3.65 MHz".
  const said = (axis, value) => {
    const at = axis.lastIndexOf(", ");
    const number = digits(value).replace("-", "−");
    return at < 0 ? `${axis} ${number}` : `${axis.slice(0, at)} ${number} ${axis.slice(at + 2)}`;
  };

  const show = (box, s, i) => {
    if (!tip) {
      make();
    }
    const data = dataOf(box);
    const point = data.s[s].p[i];
    const [x, y] = placeOf(box, data)(point);
    const lines = [point[4], said(data.x, point[0]), said(data.y, point[1])].filter(l => l);
    const name = document.createElement("strong");
    name.textContent = data.s[s].n;
    tip.replaceChildren(name, ...lines.map(l => {
      const line = document.createElement("span");
      line.textContent = l;
      return line;
    }));
    tip.hidden = mark.hidden = false;
    mark.style.left = `${x}px`;
    mark.style.top = `${y}px`;
    const width = tip.offsetWidth, height = tip.offsetHeight;
    tip.style.left = `${Math.max(4, Math.min(window.innerWidth - width - 4, x + 14))}px`;
    tip.style.top = `${y - height - 12 > 4 ? y - height - 12 : y + 14}px`;
    open = { box, s, i };
  };

  const point = e => {
    const box = e.target.closest?.(".plotbox[data-plot]");
    if (!box) {
      hide();
      return;
    }
    const data = dataOf(box);
    const place = placeOf(box, data);
    let best = null;
    data.s.forEach((series, s) => series.p.forEach((p, i) => {
      const [x, y] = place(p);
      const d = Math.hypot(x - e.clientX, y - e.clientY);
      if (!best || d < best.d) {
        best = { d, s, i };
      }
    }));
    if (best && best.d < near) {
      show(box, best.s, best.i);
    } else {
      hide();
    }
  };

  document.addEventListener("pointermove", point);
  document.addEventListener("pointerdown", point);
  document.addEventListener("scroll", hide, true);
  document.addEventListener("focusout", hide);
  document.addEventListener("keydown", e => {
    const box = e.target.closest?.(".plotbox[data-plot]");
    if (!box || e.target !== box || e.ctrlKey || e.altKey || e.metaKey) {
      return;
    }
    const data = dataOf(box);
    if (!data.s.length) {
      return;
    }
    let { s, i } = open?.box === box ? open : { s: 0, i: -1 };
    const step = { ArrowRight: [0, 1], ArrowLeft: [0, -1], ArrowDown: [1, 0], ArrowUp: [-1, 0], Home: [0, -1e9], End: [0, 1e9], PageDown: [0, 10], PageUp: [0, -10] }[e.key];
    if (!step) {
      return;
    }
    e.preventDefault();
    s = (s + step[0] + data.s.length) % data.s.length;
    i = Math.max(0, Math.min(data.s[s].p.length - 1, i + step[1]));
    show(box, s, i);
  });

  const give = (name, blob) => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  };

  // The drawing as a text of its own: what the style sheet gives is written into it.
  const textOf = box => {
    const image = box.querySelector("img");
    if (image) {
      const bytes = Uint8Array.from(atob(image.src.slice(image.src.indexOf(",") + 1)), c => c.charCodeAt(0));
      return new TextDecoder().decode(bytes);
    }
    const drawn = box.querySelector("svg");
    const copy = drawn.cloneNode(true);
    const from = [drawn, ...drawn.querySelectorAll("*")];
    const to = [copy, ...copy.querySelectorAll("*")];
    from.forEach((element, k) => {
      const look = getComputedStyle(element);
      to[k].setAttribute("style", styles.map(s => `${s}:${look.getPropertyValue(s)}`).join(";"));
      to[k].removeAttribute("class");
    });
    const [left, top, width, height] = drawn.getAttribute("viewBox").split(/[\s,]+/).map(Number);
    const ground = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    for (const [key, value] of Object.entries({ x: left, y: top, width, height, fill: getComputedStyle(box.closest(".drawing")).backgroundColor })) {
      ground.setAttribute(key, value);
    }
    copy.prepend(ground);
    copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
    copy.setAttribute("width", width);
    copy.setAttribute("height", height);
    return new XMLSerializer().serializeToString(copy);
  };

  const savePicture = async (box, name, kind) => {
    const canvas = box.querySelector("canvas");
    if (canvas) {
      give(`${name}.png`, await new Promise(done => canvas.toBlob(done, "image/png")));
      return;
    }
    const text = textOf(box);
    if (kind === "svg") {
      give(`${name}.svg`, new Blob([text], { type: "image/svg+xml" }));
      return;
    }
    const image = new Image();
    const view = new DOMParser().parseFromString(text, "image/svg+xml").documentElement.getAttribute("viewBox").split(/[\s,]+/).map(Number);
    image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(text);
    await image.decode();
    const sheet = document.createElement("canvas");
    sheet.width = 1600;
    sheet.height = Math.round(1600 * view[3] / view[2]);
    sheet.getContext("2d").drawImage(image, 0, 0, sheet.width, sheet.height);
    give(`${name}.png`, await new Promise(done => sheet.toBlob(done, "image/png")));
  };

  // A tip for drawings that find their own values; nothing hides it.
  const tipAt = (name, lines, x, y) => {
    if (!name) {
      if (tip) {
        tip.hidden = true;
      }
      return;
    }
    if (!tip) {
      make();
    }
    const head = document.createElement("strong");
    head.textContent = name;
    tip.replaceChildren(head, ...lines.map(l => {
      const line = document.createElement("span");
      line.textContent = l;
      return line;
    }));
    tip.hidden = false;
    tip.style.left = `${Math.max(4, Math.min(window.innerWidth - tip.offsetWidth - 4, x + 14))}px`;
    tip.style.top = `${Math.max(4, y - tip.offsetHeight - 12)}px`;
  };

  const saveText = (name, text) => give(name, new Blob(["\ufeff" + text], { type: "text/csv;charset=utf-8" }));

  Object.assign(window.mastwright, { savePicture, saveText, tipAt });
})();
