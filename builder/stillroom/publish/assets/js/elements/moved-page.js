/* An earlier address leads on with all that was chosen there. */
location.replace(document.currentScript.dataset.address + location.search + location.hash);
