// Finds sections of pages by words: those that have every word, in the heading first; where none has, those that have most
// of them. Runs on the reader's machine.
"use strict";
(function () {
  const most = 20, before = 60, after = 120;
  const in_heading = 100, in_title = 20, as_phrase = 150, most_counted = 5;
  // words that tell no section from another
  const passed_over = new Set(("a an and are at can do does for from get has have how i if in is it me my of on or should that the " +
    "their them there these they this to was what when where which while who why will with you your").split(" "));
  // answers come before the theory they rest on, and both before lists of sources and what is for who works on the library
  const shares = [[/^answers_page/, 1.5], [/^(bibliography|accuracy|reader_trial|library_map)_page|^md_/, 0.4]];
  const field = document.getElementById("find-words"), list = document.getElementById("find-list");

  // "2 leads?" is asked for as "2", "lead"
  function words_of(text) {
    return text.toLowerCase().split(/[\s,;:?!()"]+/).map((w) => w.replace(/^'+|[.']+$/g, ""))
      .map((w) => (w.length > 3 && w.endsWith("s") && !w.endsWith("ss") ? w.slice(0, -1) : w))
      .filter((w) => w && !passed_over.has(w) && (w.length > 1 || /\d/.test(w)));
  }
  function excerpt(text, word) {
    const at = Math.max(0, text.toLowerCase().indexOf(word)), from = Math.max(0, at - before);
    return (from > 0 ? "... " : "") + text.substring(from, at + after) + (at + after < text.length ? " ..." : "");
  }
  function weigh(words, address, title, heading, text) {
    const phrase = words.join(" ");
    let weight = words.length > 1 && (heading.includes(phrase) || text.includes(phrase)) ? as_phrase : 0;
    for (const w of words) {
      if (heading.includes(w)) weight += in_heading;
      if (title.includes(w)) weight += in_title;
      weight += Math.min(most_counted, text.split(w).length - 1);
    }
    const share = shares.find(([pages]) => pages.test(address));
    return share ? share[1] * weight : weight;
  }
  // Sections that have at least `least` of the words, those with more of them first.
  function sections(words, least) {
    const found = [];
    for (const [address, title, heading, text] of page_texts) {
      const low = [title, heading, text].map((t) => t.toLowerCase());
      const has = words.filter((w) => low.some((t) => t.includes(w)));
      if (has.length < least) continue;
      const near = [words.join(" "), ...has].find((w) => low[2].includes(w)) || "";
      found.push({
        address, name: heading ? title + ": " + heading : title, has: has.length, weight: weigh(has, address, ...low),
        near: excerpt(text, near),
      });
    }
    return found.sort((a, b) => b.has - a.has || b.weight - a.weight).slice(0, most);
  }
  function show() {
    const words = words_of(field.value);
    list.textContent = "";
    if (!words.length) return;
    let found = sections(words, words.length);
    const all = found.length > 0;
    if (!all && words.length > 1) found = sections(words, Math.ceil(words.length / 2));
    if (!all) {
      const said = document.createElement("li");
      said.textContent = found.length ? "No section has all of these words. Nearest:" : "No section has these words.";
      list.append(said);
    }
    for (const one of found) {
      const item = document.createElement("li"), link = document.createElement("a");
      link.href = one.address;
      link.textContent = one.name;
      item.append(link, document.createElement("br"), one.near);
      list.append(item);
    }
  }
  field.addEventListener("input", show);
  field.value = decodeURIComponent(location.hash.substring(1));
  show();
})();
