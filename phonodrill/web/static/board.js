"use strict";

// The board: sounds, answers and items one after another, by click, key or remote.
// Without this script each of these is a link.

const slides = [...document.querySelectorAll(".slide")];
const told = document.getElementById("told");
const clock = document.getElementById("clock");
const pause = document.getElementById("pause");
const whole = document.getElementById("whole");
const seconds = Number(document.body.dataset.seconds || 0);
let at = slides.findIndex((slide) => !slide.hidden);
let left = seconds;
let ticking = 0;

const boxesOf = (slide) => [...slide.querySelectorAll(".box")];
const answerOf = (slide) => slide.querySelector(".answer");

function tell(text) {
  told.textContent = text;
}

function fill(slide, count) {
  boxesOf(slide).forEach((box, place) => box.classList.toggle("is-full", place < count));
  for (const chunk of slide.querySelectorAll(".chunk")) {
    const boxes = [...chunk.querySelectorAll(".box")];
    // Letters that say nothing come with the sound before them.
    const before = boxesOf(slide).filter(
      (box) => chunk.compareDocumentPosition(box) & Node.DOCUMENT_POSITION_PRECEDING,
    );
    const needed = boxes.length ? boxes : before;
    chunk.classList.toggle("is-full", needed.every((box) => box.classList.contains("is-full")));
  }
}

function filled(slide) {
  return slide.querySelectorAll(".box.is-full").length;
}

function reveal(slide, shown) {
  answerOf(slide).hidden = !shown;
  slide.classList.toggle("is-shown", shown);
}

function keepAddress() {
  const address = new URL(location.href);
  address.searchParams.set("item", String(at + 1));
  if (answerOf(slides[at]).hidden) address.searchParams.delete("answer");
  else address.searchParams.set("answer", "shown");
  history.replaceState(null, "", address);
}

function go(place) {
  const to = Math.max(0, Math.min(slides.length - 1, place));
  slides[at].hidden = true;
  at = to;
  const slide = slides[at];
  fill(slide, 0);
  reveal(slide, false);
  slide.hidden = false;
  document.getElementById("number").textContent = String(at + 1);
  tell(slide.querySelector(".ask").textContent);
  keepAddress();
  label();
  startClock();
}

function showAnswer() {
  const slide = slides[at];
  fill(slide, boxesOf(slide).length);
  reveal(slide, true);
  tell(answerOf(slide).innerText);
  keepAddress();
  label();
}

// The next sound, else the answer, else the next item.
function forward() {
  const slide = slides[at];
  const count = filled(slide);
  const boxes = boxesOf(slide);
  if (answerOf(slide).hidden && count < boxes.length) {
    fill(slide, count + 1);
    tell(`Sound ${count + 1} of ${boxes.length}: ${boxes[count].textContent.trim()}`);
  } else if (answerOf(slide).hidden) {
    showAnswer();
  } else if (at < slides.length - 1) {
    go(at + 1);
  } else {
    tell("That was the last one.");
  }
}

function label() {
  const answer = document.getElementById("answer");
  if (answer) answer.hidden = !answerOf(slides[at]).hidden;
}

function showClock() {
  const minutes = Math.floor(left / 60);
  const rest = String(left % 60).padStart(2, "0");
  clock.textContent = left ? `${minutes}:${rest}` : "Time is up";
}

function stopClock() {
  clearInterval(ticking);
  ticking = 0;
  pause.textContent = "Start the clock";
}

function runClock() {
  clearInterval(ticking);
  pause.textContent = "Stop the clock";
  ticking = setInterval(() => {
    left -= 1;
    if (left <= 0) stopClock();
    showClock();
  }, 1000);
}

function startClock() {
  if (!seconds) return;
  left = seconds;
  clock.hidden = pause.hidden = false;
  showClock();
  runClock();
}

function toggleClock() {
  if (!seconds) return;
  if (ticking) stopClock();
  else if (left > 0) runClock();
  else startClock();
}

const KEYS = {
  " ": forward,
  ArrowRight: forward,
  ArrowDown: forward,
  PageDown: forward,
  ArrowLeft: () => go(at - 1),
  ArrowUp: () => go(at - 1),
  PageUp: () => go(at - 1),
  Home: () => go(0),
  End: () => go(slides.length - 1),
};

document.addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  const isControl = event.target.closest("a, button");
  if (event.key === " " && isControl) return;
  const act = KEYS[event.key];
  if (!act) return;
  event.preventDefault();
  act();
});

document.querySelector("main").addEventListener("click", (event) => {
  if (!event.target.closest("a, button")) forward();
});

function takeOver(id, act) {
  document.getElementById(id)?.addEventListener("click", (event) => {
    event.preventDefault();
    act();
  });
}

takeOver("back", () => go(at - 1));
takeOver("next", () => go(at + 1));
takeOver("answer", showAnswer);
pause.addEventListener("click", toggleClock);

if (document.fullscreenEnabled) {
  whole.hidden = false;
  whole.addEventListener("click", () => {
    if (document.fullscreenElement) document.exitFullscreen();
    else document.documentElement.requestFullscreen();
  });
  document.addEventListener("fullscreenchange", () => {
    whole.textContent = document.fullscreenElement ? "Leave full screen" : "Full screen";
  });
}

document.body.classList.add("has-keys");
fill(slides[at], answerOf(slides[at]).hidden ? 0 : boxesOf(slides[at]).length);
label();
startClock();
