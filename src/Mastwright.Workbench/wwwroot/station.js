// Dragging on the elevation: a guy level goes up and down, an anchor nearer and farther. The page is told where it was let go.
(() => {
  const lift = (drawing, page) => {
    drawing.addEventListener("pointerdown", e => {
      const held = e.target.closest("g.level, g.slide");
      if (!held) {
        return;
      }
      e.preventDefault();
      const upright = held.classList.contains("level");
      const at = p => new DOMPoint(p.clientX, p.clientY).matrixTransform(drawing.getScreenCTM().inverse());
      const start = at(e);
      let moved = 0;
      drawing.setPointerCapture(e.pointerId);
      const move = p => {
        const now = at(p);
        moved = upright ? now.y - start.y : now.x - start.x;
        held.setAttribute("transform", upright ? `translate(0 ${moved})` : `translate(${moved} 0)`);
      };
      const end = p => {
        drawing.removeEventListener("pointermove", move);
        drawing.removeEventListener("pointerup", end);
        drawing.removeEventListener("pointercancel", end);
        held.removeAttribute("transform");
        if (p.type !== "pointerup" || Math.abs(moved) <= 2) {
          return;
        }
        const metres = moved / Number(drawing.dataset.scale);
        const { mast, level, height, anchor, along, distance } = held.dataset;
        if (upright) {
          page.invokeMethodAsync("Lifted", Number(mast), Number(level), Number(height) - metres);
        } else {
          page.invokeMethodAsync("Slid", Number(mast), Number(anchor), Number(distance) + metres / Number(along));
        }
      };
      drawing.addEventListener("pointermove", move);
      drawing.addEventListener("pointerup", end);
      drawing.addEventListener("pointercancel", end);
    });
  };

  // The arrow keys turn a dial; the page under it stays.
  document.addEventListener("keydown", e => {
    if (e.target.getAttribute?.("role") === "slider" && ["ArrowUp", "ArrowDown", "Home", "End"].includes(e.key)) {
      e.preventDefault();
    }
  });

  Object.assign(window.mastwright, { lift });
})();
