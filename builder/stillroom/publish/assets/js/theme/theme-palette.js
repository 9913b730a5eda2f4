/* The colours chosen on an earlier page, before the first line of this one is drawn. */
{
  const chosen = window.__md_get("__palette")?.color;
  if (chosen && typeof chosen === "object") {
    let colour = chosen;
    if (chosen.media === "(prefers-color-scheme)") {
      const scheme = matchMedia("(prefers-color-scheme: light)").matches ? "light" : "dark";
      const input = document.querySelector(`[data-md-color-media='(prefers-color-scheme: ${scheme})']`);
      const names = ["media", "scheme", "primary", "accent"];
      if (input) colour = Object.fromEntries(names.map((name) => [name, input.getAttribute(`data-md-color-${name}`)]));
    }
    for (const [name, value] of Object.entries(colour)) {
      document.body.setAttribute(`data-md-color-${name}`, value);
    }
  }
}
