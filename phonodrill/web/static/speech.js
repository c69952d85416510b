"use strict";

// Words and sentences in the browser's own voice, where it has an English one that works
// without the network. A single sound is never given to it: it would add a vowel.

const speech = window.speechSynthesis;

function englishVoice() {
  const local = speech.getVoices().filter((voice) => voice.localService);
  const english = local.filter((voice) => /^en([-_]|$)/i.test(voice.lang));
  return english.find((voice) => /^en[-_]us$/i.test(voice.lang)) || english[0];
}

// In an element with data-speak="SELECTOR", each of these gets a button that speaks its text.
function addSpeakButtons() {
  for (const part of document.querySelectorAll("[data-speak]")) {
    for (const spoken of part.querySelectorAll(part.dataset.speak)) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "speak";
      button.dataset.say = spoken.textContent.trim();
      button.textContent = "Say";
      button.setAttribute("aria-label", `Say ${button.dataset.say}`);
      button.hidden = true;
      spoken.append(" ", button);
    }
  }
}

function offerSpeech() {
  const has = englishVoice() !== undefined;
  for (const shown of document.querySelectorAll("button.speak, .speech-note")) {
    shown.hidden = !has;
  }
}

function say(text) {
  const voice = englishVoice();
  if (!voice) return;
  const words = new SpeechSynthesisUtterance(text);
  words.voice = voice;
  words.lang = voice.lang;
  words.rate = 0.85;
  speech.cancel();
  speech.speak(words);
}

if (speech && window.SpeechSynthesisUtterance) {
  addSpeakButtons();
  offerSpeech();
  // Some browsers know their voices only after a while.
  speech.addEventListener("voiceschanged", offerSpeech);
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button.speak");
    if (button) say(button.dataset.say);
  });
  window.addEventListener("pagehide", () => speech.cancel());
}
