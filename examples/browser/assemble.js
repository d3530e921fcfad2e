// node assemble.js ENGINE.js ENGINE.wasm STATIONS PAGE.html: puts page, style, scripts, compiled program and demo stations
// into one file.
"use strict";
const crypto = require("crypto");
const fs = require("fs");
const path = require("path");
const zlib = require("zlib");

const [engine, wasm, stations, out] = process.argv.slice(2);
const here = (name) => fs.readFileSync(path.join(__dirname, name), "utf8");

function station_of(file) {
    const text = fs.readFileSync(path.join(stations, file), "utf8");
    const name = /^name *= *"([^"]*)"/m.exec(text);
    return { file, title: name ? name[1] : file, text };
}

const parts = {
    worker: fs.readFileSync(engine, "utf8") + "\n" + here("call.js") + here("worker.js"),
    wasm: zlib.gzipSync(fs.readFileSync(wasm), { level: 9 }).toString("base64"),
    stations: fs.readdirSync(stations).filter((file) => file.endsWith(".toml")).sort().map(station_of),
};
const script = here("page.js");
if (/<\/script|<!--/i.test(script)) throw new Error("page.js would end its own element");
const hash = crypto.createHash("sha256").update(script).digest("base64");
const filled = {
    // The page's own script alone may run, and nothing may be fetched from anywhere.
    policy: "default-src 'none'; script-src 'sha256-" + hash + "' 'wasm-unsafe-eval'; worker-src blob:; " +
        "style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'",
    "page.css": here("page.css"),
    parts: JSON.stringify(parts).replace(/</g, "\\u003c"),
    script,
};
fs.writeFileSync(out, here("page.html").replace(/\{\{([a-z.]+)\}\}/g, (whole, name) => {
    if (!(name in filled)) throw new Error("page.html asks for " + name);
    return filled[name];
}));
