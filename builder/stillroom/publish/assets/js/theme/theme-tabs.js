/* An address that names a tab opens it. */
{
  const target = /** @type {any} */ (document.getElementById(location.hash.slice(1)));
  if (target?.name) target.checked = target.name.startsWith("__tabbed_");
}
