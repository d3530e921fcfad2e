// A page in headless Chromium, driven as its user would drive it, by the pipe of its debugging protocol.
"use strict";
const { spawn } = require("child_process");
const fs = require("fs");
const os = require("os");
const path = require("path");

// Opens a file; size in CSS pixels. The page has no network.
async function open_page(program, file, { width = 1200, height = 900, dark = false } = {}) {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), "weldloop_page_"));
    const child = spawn(program, ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
        "--remote-debugging-pipe", "--user-data-dir=" + path.join(folder, "profile"), "about:blank"],
        { stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"], env: { ...process.env, TZ: "UTC" } });
    const page = { agrees: true };  // with whatever the page asks its user
    const waiting = new Map();
    const heard = [];
    let number = 0;
    let rest = "";
    let gone = null;
    child.on("exit", (status) => {
        gone = new Error("Chromium ended with status " + status);
        for (const { reject } of waiting.values()) reject(gone);
    });
    child.stdio[3].on("error", () => {});
    child.stdio[4].setEncoding("utf8");
    child.stdio[4].on("data", (piece) => {
        const messages = (rest + piece).split("\0");
        rest = messages.pop();
        for (const message of messages.map((m) => JSON.parse(m))) {
            const asked = waiting.get(message.id);
            if (!asked) {
                heard.push(message);
                if (message.method === "Page.javascriptDialogOpening")
                    send("Page.handleJavaScriptDialog", { accept: page.agrees }).catch(() => {});
                continue;
            }
            waiting.delete(message.id);
            if (message.error) asked.reject(new Error(message.error.message));
            else asked.resolve(message.result);
        }
    });
    let sessionId;
    const send = (method, params = {}) => new Promise((resolve, reject) => {
        if (gone) return reject(gone);
        waiting.set(++number, { resolve, reject });
        child.stdio[3].write(JSON.stringify({ id: number, method, params, sessionId }) + "\0");
    });
    const downloads = path.join(folder, "saved");
    fs.mkdirSync(downloads);
    await send("Browser.setDownloadBehavior", { behavior: "allow", downloadPath: downloads });
    const { targetId } = await send("Target.createTarget", { url: "about:blank" });
    sessionId = (await send("Target.attachToTarget", { targetId, flatten: true })).sessionId;
    for (const domain of ["Page", "Runtime", "Network", "Log"]) await send(domain + ".enable");
    await send("Network.emulateNetworkConditions", { offline: true, latency: 0, downloadThroughput: -1, uploadThroughput: -1 });
    await send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: width < 500 });
    await send("Emulation.setEmulatedMedia", { features: [{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }] });
    await send("Page.navigate", { url: "file://" + path.resolve(file) });

    Object.assign(page, {
        send,
        // What an expression gives, awaited.
        async value(expression) {
            const said = await send("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
            if (said.exceptionDetails)
                throw new Error(expression + ": " + (said.exceptionDetails.exception || {}).description);
            return said.result.value;
        },
        // Waits until an expression is true. The longest a station takes is seconds; a loaded machine is given minutes.
        async until(expression, seconds = 180) {
            for (const end = Date.now() + seconds * 1000; Date.now() < end;) {
                if (await page.value(expression)) return;
                await new Promise((later) => setTimeout(later, 100));
            }
            throw new Error("not within " + seconds + " s: " + expression);
        },
        // Presses a button that saves, and gives the file.
        async saved(selector, name) {
            const file = path.join(downloads, name);
            fs.rmSync(file, { force: true });
            await page.value("document.querySelector(" + JSON.stringify(selector) + ").click()");
            for (const end = Date.now() + 30000; Date.now() < end;) {
                // it takes its name when it is whole
                if (fs.existsSync(file)) return fs.readFileSync(file);
                await new Promise((later) => setTimeout(later, 50));
            }
            throw new Error(selector + " saves no " + name + "; there: " + fs.readdirSync(downloads));
        },
        // Gives a file to an input, as its user would.
        async give(selector, file) {
            const { root } = await send("DOM.getDocument");
            const { nodeId } = await send("DOM.querySelector", { nodeId: root.nodeId, selector });
            await send("DOM.setFileInputFiles", { nodeId, files: [file] });
        },
        questions: () => heard.filter((m) => m.method === "Page.javascriptDialogOpening").map((m) => m.params.message),
        async picture(file, whole = false) {
            const { data } = await send("Page.captureScreenshot", { format: "png", captureBeyondViewport: whole });
            fs.writeFileSync(file, Buffer.from(data, "base64"));
        },
        // Addresses that were asked for, other than the page's own and what it made itself.
        foreign: () => heard.filter((m) => m.method === "Network.requestWillBeSent")
            .map((m) => m.params.request.url).filter((url) => !/^(file|blob|data|about):/.test(url)),
        // What went wrong in scripts, and what the page's policy refused.
        complaints: () => heard.filter((m) => m.method === "Runtime.exceptionThrown" ||
            (m.method === "Log.entryAdded" && m.params.entry.level === "error"))
            .map((m) => (m.params.exceptionDetails ? m.params.exceptionDetails.text : m.params.entry.text)),
        async close() {
            const ended = new Promise((done) => child.once("exit", done));
            if (!gone) {
                sessionId = undefined;
                send("Browser.close").catch(() => {});
                await ended;
            }
            fs.rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
        },
    });
    await page.until("document.readyState === 'complete'");
    return page;
}

module.exports = { open_page };
