// The few things a page cannot do from the server: remember how it looks, shortcuts, dragging an anchor.
(() => {
  const remember = (name, value) => {
    document.cookie = `${name}=${value}; path=/; max-age=31536000; SameSite=Strict`;
  };

  const look = value => {
    document.documentElement.dataset.theme = value;
    document.querySelector('meta[name="color-scheme"]').content = value;
    remember("mastwright-look", value);
  };

  const press = key => {
    const button = document.querySelector(`button[data-key="${key}"]`);
    if (button && !button.disabled) {
      button.click();
      return true;
    }
    return false;
  };

  // The page has met its server and answers to clicks.
  const live = () => {
    performance.mark("mastwright-live");
    document.documentElement.dataset.live = "yes";
  };

  document.addEventListener("keydown", e => {
    const typing = e.target.closest?.("input, textarea, select, .cm-editor");
    const command = e.ctrlKey || e.metaKey;
    if (command && !e.altKey && e.key.toLowerCase() === "s") {
      e.preventDefault();
      press("save");
    } else if (command && !typing && e.key.toLowerCase() === "z") {
      e.preventDefault();
      press(e.shiftKey ? "redo" : "undo");
    } else if (command && !typing && e.key.toLowerCase() === "y") {
      e.preventDefault();
      press("redo");
    } else if (e.key === "Escape" && press("close")) {
      e.preventDefault();
    } else if (e.altKey && !command && e.key >= "1" && e.key <= "7") {
      const link = document.querySelectorAll("nav.strip a")[Number(e.key) - 1];
      if (link) {
        e.preventDefault();
        link.click();
      }
    }
  });

  // An anchor follows the pointer; the page is told where it was let go, in metres from its mast's foot.
  const drag = (drawing, page) => {
    drawing.addEventListener("pointerdown", e => {
      const anchor = e.target.closest("g.anchor");
      if (!anchor) {
        return;
      }
      e.preventDefault();
      const at = p => new DOMPoint(p.clientX, p.clientY).matrixTransform(drawing.getScreenCTM().inverse());
      const start = at(e);
      const box = anchor.querySelector("rect");
      const centre = { x: Number(box.getAttribute("x")) + 6, y: Number(box.getAttribute("y")) + 6 };
      let moved = { x: 0, y: 0 };
      drawing.setPointerCapture(e.pointerId);
      const move = p => {
        const now = at(p);
        moved = { x: now.x - start.x, y: now.y - start.y };
        anchor.setAttribute("transform", `translate(${moved.x} ${moved.y})`);
      };
      const end = p => {
        drawing.removeEventListener("pointermove", move);
        drawing.removeEventListener("pointerup", end);
        drawing.removeEventListener("pointercancel", end);
        anchor.removeAttribute("transform");
        if (p.type === "pointerup" && Math.hypot(moved.x, moved.y) > 2) {
          const scale = Number(drawing.dataset.scale);
          const east = (centre.x + moved.x - Number(anchor.dataset.footX)) / scale;
          const north = (Number(anchor.dataset.footY) - centre.y - moved.y) / scale;
          page.invokeMethodAsync("Dropped", Number(anchor.dataset.mast), Number(anchor.dataset.anchor), east, north);
        }
      };
      drawing.addEventListener("pointermove", move);
      drawing.addEventListener("pointerup", end);
      drawing.addEventListener("pointercancel", end);
    });
  };

  window.mastwright = { remember, look, drag, live };
})();
