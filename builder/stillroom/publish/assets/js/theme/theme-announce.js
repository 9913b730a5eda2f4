/* A notice that was put away stays away until its words change. */
{
  const notice = document.querySelector("[data-md-component=announce]");
  const words = notice?.querySelector(".md-typeset");
  if (words && window.__md_hash(words.innerHTML) === window.__md_get("__announce")) notice.hidden = true;
}
