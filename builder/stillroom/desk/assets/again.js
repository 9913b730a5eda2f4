// A page on which something is still being worked out: looks again each second and puts in place only
// what has changed, so that nobody who reads it, by eye or ear, is thrown back to its beginning.
// Without this script the page loads itself anew.

const EACH_MS = 1000;
const main = document.getElementById("main");

// Puts the children of one element in place of another's that say something else.
function follow(here, there) {
  if (here.children.length !== there.children.length) {
    here.replaceChildren(...there.childNodes);
    return;
  }
  const others = [...there.children]; // one that is put in place is gone from there
  for (const [at, child] of [...here.children].entries()) {
    const other = others[at];
    if (child.matches("ul") && other.matches("ul")) {
      follow(child, other);
    } else if (child.outerHTML !== other.outerHTML) {
      child.replaceWith(other);
    }
  }
}

async function look() {
  const reply = await fetch(location.href).catch(() => null);
  if (!reply || !reply.ok) {
    return; // the desk was closed: nothing more comes
  }
  const page = new DOMParser().parseFromString(await reply.text(), "text/html");
  const there = page.getElementById("main");
  follow(main, there);
  if (page.querySelector("script[src$='again.js']")) {
    setTimeout(look, EACH_MS);
  } else if (page.querySelector("meta[http-equiv=refresh]")) {
    location.reload(); // what came of it leads on by itself: a zip is handed over
  } else if (document.activeElement === document.body) {
    // what was pressed to wait is gone: what came of it is read out
    (main.querySelector("[autofocus]") ?? main).focus();
  }
}

setTimeout(look, EACH_MS);
