// Finds sections of pages by words: those that have every word, in the heading first. Runs on the reader's machine.
"use strict";
(function () {
  const most = 20, before = 60, after = 120;
  const in_heading = 100, in_title = 20, as_phrase = 150, most_counted = 5;
  const field = document.getElementById("find-words"), list = document.getElementById("find-list");

  function excerpt(text, word) {
    const at = Math.max(0, text.toLowerCase().indexOf(word)), from = Math.max(0, at - before);
    return (from > 0 ? "... " : "") + text.substring(from, at + after) + (at + after < text.length ? " ..." : "");
  }
  function weigh(words, title, heading, text) {
    const phrase = words.join(" ");
    let weight = heading.includes(phrase) || text.includes(phrase) ? as_phrase : 0;
    for (const w of words) {
      if (heading.includes(w)) weight += in_heading;
      if (title.includes(w)) weight += in_title;
      weight += Math.min(most_counted, text.split(w).length - 1);
    }
    return weight;
  }
  function show() {
    const words = field.value.toLowerCase().split(/\s+/).filter((w) => w.length > 1);
    const found = [];
    for (const [address, title, heading, text] of page_texts) {
      const low = [title, heading, text].map((t) => t.toLowerCase());
      if (!words.length || !words.every((w) => low.some((t) => t.includes(w)))) continue;
      const near = [words.join(" "), ...words].find((w) => low[2].includes(w)) || "";
      found.push({
        address, name: heading ? title + ": " + heading : title, weight: weigh(words, ...low), near: excerpt(text, near),
      });
    }
    found.sort((a, b) => b.weight - a.weight);
    list.textContent = "";
    for (const one of found.slice(0, most)) {
      const item = document.createElement("li"), link = document.createElement("a");
      link.href = one.address;
      link.textContent = one.name;
      item.append(link, document.createElement("br"), one.near);
      list.append(item);
    }
    if (words.length && !found.length) list.textContent = "No section has all of these words.";
  }
  field.addEventListener("input", show);
  field.value = decodeURIComponent(location.hash.substring(1));
  show();
})();
