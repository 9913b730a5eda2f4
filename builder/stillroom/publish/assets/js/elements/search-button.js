/* The word "Search" on a narrow screen: it leads to the search field, which opens when it is entered. */

const button = document.querySelector(".masthead__search");
const field = document.querySelector("[data-md-component=search-query]");

if (button && field) {
  button.hidden = false;
  button.addEventListener("click", () => field.focus());
}
