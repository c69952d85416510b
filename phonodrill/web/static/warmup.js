"use strict";

// Only the places that the chosen task has are offered; without a script all are.
const task = document.getElementById("task");
const place = document.getElementById("at");
const places = [...place.options];

function offerPlaces() {
  const chosen = place.value;
  const fit = places.filter(
    (option) => !option.dataset.tasks || option.dataset.tasks.split(" ").includes(task.value),
  );
  place.replaceChildren(...fit);
  place.value = fit.some((option) => option.value === chosen) ? chosen : "";
}

task.addEventListener("change", offerPlaces);
offerPlaces();
