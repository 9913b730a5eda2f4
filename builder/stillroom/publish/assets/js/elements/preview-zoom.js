// Shows what has a true size in millimetres no wider than the place it stands in. What is printed
// is never zoomed: only the element handed in here carries --sheet-zoom.

const PX_PER_MM = 96 / 25.4;

/**
 * Keep `element`'s --sheet-zoom such that `width()` millimetres go into it; returns how to stop.
 * Never enlarges.
 * @param {HTMLElement} element
 * @param {(room: number) => number} width
 */
export function fitPreview(element, width) {
  const fit = () => {
    const room = element.clientWidth;
    const wanted = width(room / PX_PER_MM) * PX_PER_MM;
    if (room > 0) element.style.setProperty("--sheet-zoom", String(Math.min(1, room / wanted)));
  };
  const watch = new ResizeObserver(fit);
  watch.observe(element);
  fit();
  return { fit, stop: () => watch.disconnect() };
}
