"""Opens reports in headless Chromium as a phone and a desk show them: nothing scrolls sideways, nothing is complained
of, nothing is fetched, no script runs, and every part of the diagram has a title.

Chromium is driven over its debugging pipe (file descriptors 3 and 4, messages of JSON that end in a zero byte).
Usage: browser.py CHROMIUM PROGRAM NETLISTS [PICTURES]: with PICTURES, a folder, screenshots are left there to look at.
"""
import base64
import json
import os
import pathlib
import subprocess
import sys
import tempfile

WIDTHS = (360, 1280)
MARKUP = ['<script>alert(1)<\\script>', '"><img src=x onerror=alert(1)>', "<b onclick='x'>bold", '&amp;&lt;&#0;', '<!--', '-->',
          ']]>', '<svg onload=alert(1)>', "' style='position:fixed;width:9999px", 'W' * 80, '船' * 60, 'שלום עולם', '\u202egnp.exe']

# What the page is asked once it is laid out. A wide drawing may scroll inside its own frame.
MEASURE = """(() => {
  const page = document.documentElement, outside = [];
  for (const e of document.body.querySelectorAll('*')) {
    if (e.closest('figure.wide') && !e.matches('figure.wide')) continue;
    const box = e.getBoundingClientRect();
    if (box.right > page.clientWidth + 1 || box.left < -1) outside.push(e.tagName + ' ' + e.textContent.slice(0, 40));
  }
  const groups = [...document.querySelectorAll('figure.large svg g:not(.furniture)')];
  return {scroll: page.scrollWidth, width: page.clientWidth, outside: outside.slice(0, 5),
          untitled: groups.filter(g => !g.querySelector(':scope > title')).length, groups: groups.length,
          scripts: document.scripts.length, small: [...document.querySelectorAll('p,td,h1,h2,h3')]
            .filter(e => parseFloat(getComputedStyle(e).fontSize) < 11).length};
})()"""


class Browser:
    def __init__(self, chromium, profile):
        to_browser, from_browser = os.pipe(), os.pipe()
        for end in (to_browser[0], from_browser[1]):
            os.set_inheritable(end, True)
        self.process = subprocess.Popen(
            ["sh", "-c", f'exec 3<&{to_browser[0]} 4>&{from_browser[1]}; exec "$@"', "sh", chromium, "--headless=new",
             "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars", "--no-first-run",
             f"--user-data-dir={profile}", "--remote-debugging-pipe", "about:blank"],
            close_fds=False, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_browser[0])
        os.close(from_browser[1])
        self.out, self.into = os.fdopen(to_browser[1], "wb"), os.fdopen(from_browser[0], "rb")
        self.count, self.buffer, self.events = 0, b"", []

    def receive(self):
        while b"\0" not in self.buffer:
            piece = os.read(self.into.fileno(), 1 << 16)
            if not piece:
                raise RuntimeError("the browser ended")
            self.buffer += piece
        message, self.buffer = self.buffer.split(b"\0", 1)
        return json.loads(message)

    def call(self, method, session=None, **parameters):
        self.count += 1
        request = {"id": self.count, "method": method, "params": parameters}
        if session:
            request["sessionId"] = session
        self.out.write(json.dumps(request).encode() + b"\0")
        self.out.flush()
        while True:
            message = self.receive()
            if message.get("id") == self.count:
                if "error" in message:
                    raise RuntimeError(f"{method}: {message['error']}")
                return message["result"]
            self.events.append(message)

    def wait_for(self, event):
        while not any(e.get("method") == event for e in self.events):
            self.events.append(self.receive())

    def close(self):
        self.call("Browser.close")
        self.process.wait(20)


def opened(browser, page, width):
    """What a page of this width measures, and a picture of it."""
    target = browser.call("Target.createTarget", url="about:blank")["targetId"]
    session = browser.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
    for domain in ("Page", "Runtime", "Log", "Network"):
        browser.call(f"{domain}.enable", session)
    browser.call("Emulation.setDeviceMetricsOverride", session, width=width, height=800, deviceScaleFactor=1, mobile=width < 700)
    browser.events.clear()
    browser.call("Page.navigate", session, url=page.as_uri())
    browser.wait_for("Page.loadEventFired")
    measured = browser.call("Runtime.evaluate", session, expression=MEASURE, returnByValue=True)["result"]["value"]
    shot = browser.call("Page.captureScreenshot", session, format="png", captureBeyondViewport=True)["data"]
    events = list(browser.events)
    browser.call("Target.closeTarget", targetId=target)
    return measured, base64.b64decode(shot), events


def faults(page, width, measured, events):
    """What is wrong with it, in words."""
    if measured["scroll"] > measured["width"]:
        yield f"scrolls sideways: {measured['scroll']} px in {measured['width']} px"
    if measured["width"] != width:
        yield f"was laid out {measured['width']} px wide"
    for words in measured["outside"]:
        yield f"reaches out of the page: {words}"
    if measured["untitled"] or measured["groups"] < 10:
        yield f"{measured['untitled']} of {measured['groups']} parts of the diagram have no title"
    if measured["scripts"]:
        yield f"has {measured['scripts']} scripts"
    if measured["small"]:
        yield f"{measured['small']} texts are smaller than 11 px"
    for event in events:
        method, told = event.get("method"), event.get("params", {})
        if method in ("Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded", "Page.javascriptDialogOpening"):
            yield f"{method}: {json.dumps(told)[:200]}"
        if method == "Network.requestWillBeSent" and told["request"]["url"] not in (page.as_uri(), "data:,"):
            yield f"fetches {told['request']['url'][:100]}"


def hostile_netlist():
    """A system whose every name is markup or far too long."""
    names = [name[:80] for name in MARKUP]
    job = {"customer": names[0], "technician": names[11], "date": names[3], "reference": names[1], "complaint": names[9] * 4}
    system = {"name": names[9], "nominal": "12 V", "job": job}
    netlist = {"ohmtrail": 1, "system": system, "runs": [], "loads": [], "points": {},
               "batteries": [{"id": names[7], "plus": "b+", "minus": "b-", "nominal": "12 V", "capacity": "400 Ah"}],
               "cases": [{"name": names[8], "on": "all"}]}
    for k, name in enumerate(names):
        point = (name[:70] + f" p{k}").replace("/", "").replace("@", "")
        netlist["points"][point] = {"place": name}
        netlist["runs"].append({"id": name[:70] + f" r{k}", "from": "b+", "to": point, "gauge": "14 AWG", "length": "12 ft",
                                "resistance": "0.2 ohm"})
        netlist["loads"].append({"id": name[:70] + f" l{k}", "plus": point, "minus": "b-", "takes": "1 A"})
    return json.dumps(netlist)


def reports(program, netlists, folder):
    """One page a system, with every chapter that can be asked for."""
    hostile = folder / "hostile.json"
    hostile.write_text(hostile_netlist(), encoding="utf-8")
    for source in [*sorted(netlists.glob("*.json")), hostile]:
        page = folder / (source.stem + ".html")
        call = [program, "report", source, "--bench", "--rewire", "--time-limit", "1", "--before", source, "-o", page]
        subprocess.run(call, check=True, stdout=subprocess.DEVNULL)
        yield page


def main(chromium, program, netlists, pictures=None):
    wrong = 0
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        browser = Browser(chromium, folder / "profile")
        for page in reports(program, pathlib.Path(netlists), folder):
            for width in WIDTHS:
                measured, shot, events = opened(browser, page, width)
                if pictures:
                    (pathlib.Path(pictures) / f"{page.stem}-{width}.png").write_bytes(shot)
                for words in faults(page, width, measured, events):
                    print(f"{page.name} at {width} px: {words}")
                    wrong += 1
        browser.close()
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
