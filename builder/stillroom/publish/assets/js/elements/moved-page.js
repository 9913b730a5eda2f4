/* An earlier address leads on with all that was chosen there. */
location.replace(/** @type {any} */ (document.currentScript).dataset.address + location.search + location.hash);
