// Finds pages by the words in them: those that have every word, a word in the title first. Runs on the reader's machine.
"use strict";
(function () {
  const most = 20, before = 60, after = 120;
  const field = document.getElementById("find-words"), list = document.getElementById("find-list");

  function excerpt(text, word) {
    const at = text.toLowerCase().indexOf(word);
    const from = Math.max(0, at - before);
    return (from > 0 ? "... " : "") + text.substring(from, at + after) + " ...";
  }
  function show() {
    const words = field.value.toLowerCase().split(/\s+/).filter((w) => w.length > 1);
    const phrase = words.join(" "), found = [];
    for (const [address, title, text] of page_texts) {
      const low = text.toLowerCase(), head = title.toLowerCase();
      if (!words.length || !words.every((w) => low.includes(w) || head.includes(w))) continue;
      let weight = low.includes(phrase) || head.includes(phrase) ? 200 : 0;
      for (const w of words) weight += (head.includes(w) ? 100 : 0) + Math.min(20, low.split(w).length - 1);
      found.push({ address, title, weight, near: excerpt(text, [phrase, ...words].find((w) => low.includes(w)) || "") });
    }
    found.sort((a, b) => b.weight - a.weight);
    list.textContent = "";
    for (const one of found.slice(0, most)) {
      const item = document.createElement("li"), link = document.createElement("a");
      link.href = one.address;
      link.textContent = one.title;
      item.append(link, document.createElement("br"), one.near);
      list.append(item);
    }
    if (words.length && !found.length) list.textContent = "No page has all of these words.";
  }
  field.addEventListener("input", show);
  field.value = decodeURIComponent(location.hash.substring(1));
  show();
})();
