"use strict";

// Entering a check by keys. Each key stands for a button or a link of the page, which
// does the same without this script.

const OFF = "phonodrill-keys-off";
const told = document.getElementById("keys-told");
const toggle = document.getElementById("keys");
let isOn = true;

function remembered() {
  try {
    return localStorage.getItem(OFF) !== "1";
  } catch {
    return true; // where nothing may be kept, keys are on
  }
}

function turn(on) {
  isOn = on;
  if (!toggle) return;
  toggle.textContent = on ? "Turn keys off" : "Turn keys on";
}

function isTyping(target) {
  return Boolean(target.closest("input:not([type=hidden]), textarea, select"));
}

document.addEventListener("keydown", (event) => {
  if (!isOn || event.altKey || event.ctrlKey || event.metaKey || event.repeat) return;
  if (isTyping(event.target)) return;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const meant = [...document.querySelectorAll("[data-key]")].find(
    (one) => one.dataset.key === key && !one.disabled,
  );
  if (!meant) return;
  event.preventDefault();
  meant.click();
});

toggle?.addEventListener("click", () => {
  turn(!isOn);
  try {
    localStorage.setItem(OFF, isOn ? "0" : "1");
  } catch {
    // It holds for this page only.
  }
});

if (told) told.hidden = false;
turn(remembered());
