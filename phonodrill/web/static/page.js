"use strict";

// What every page does beyond what works without a script: nothing here is needed
// to use the page.

// A form is sent again when a choice changes, so that a choice is one click.
for (const form of document.querySelectorAll("form[data-at-once]")) {
  for (const control of form.querySelectorAll("select, input[type=checkbox]")) {
    control.addEventListener("change", () => form.requestSubmit());
  }
}

// Printing is the browser's own; its button is of no use without a script.
for (const button of document.querySelectorAll("button[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
