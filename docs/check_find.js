// node check_find.js PAGES FIND_JS QUERIES: what find.js lists on the built PAGES for the words of each line of QUERIES,
// "words | address that comes first" or "words | > what is said where no section has them all". The page it runs on is no
// more than it asks for: whatever else of a browser it used, a connection above all, would be an error here.
"use strict";
const fs = require("fs"), path = require("path"), vm = require("vm");
const [pages, program, queries] = process.argv.slice(2);
const wrong = [];

function element(name) {
  return {
    name, children: [], text: "", value: "", listeners: {},
    set textContent(t) { this.text = t; this.children = []; },
    get textContent() { return this.text; },
    append(...more) { this.children.push(...more); },
    addEventListener(kind, what) { this.listeners[kind] = what; },
  };
}
const field = element("input"), list = element("ol");
const context = vm.createContext({
  document: { getElementById: (id) => ({ "find-words": field, "find-list": list })[id], createElement: element },
  location: { hash: "" },
  decodeURIComponent,
});
for (const script of [path.join(pages, "page_texts.js"), program])
  vm.runInContext(fs.readFileSync(script, "utf8"), context, { filename: script });

let asked = 0;
for (const line of fs.readFileSync(queries, "utf8").split("\n")) {
  if (!line || line.startsWith("#")) continue;
  const [words, wanted] = line.split(" | ");
  field.value = words;
  field.listeners.input();
  const said = list.children.filter((item) => !item.children.length).map((item) => "> " + item.text);
  const links = list.children.filter((item) => item.children.length).map((item) => item.children[0].href);
  const first = said[0] || links[0];
  if (first !== wanted) wrong.push(`"${words}": ${wanted} wanted, ${first} found, then ${links.slice(0, 3).join(", ")}`);
  for (const link of links) {
    const [page, place] = link.split("#"), file = path.join(pages, page);
    if (!fs.existsSync(file)) wrong.push(`"${words}" leads to ${link}, which is no page`);
    else if (place && !fs.readFileSync(file, "utf8").includes(`id="${place}"`)) wrong.push(`"${words}" leads to no place ${link}`);
  }
  ++asked;
}
if (!asked) wrong.push(queries + " asks nothing");
if (wrong.length) {
  console.error(wrong.join("\n"));
  process.exit(1);
}
console.log(asked + " searches find what they should");
