"""check.py LIBRARY CLIENT REPOSITORY: the wrapper of examples/c_wrapper as C and Python meet it."""

import concurrent.futures
import ctypes
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

LIBRARY, CLIENT, REPOSITORY = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
sys.path.insert(0, str(REPOSITORY / "examples" / "c_wrapper"))
sys.dont_write_bytecode = True
import assess  # noqa: E402

STATIONS = REPOSITORY / "examples" / "stations"
library = assess.Weldloop(LIBRARY)


def run(*words):
    return subprocess.run([CLIENT, *map(str, words)], capture_output=True, check=False)


class Wrapper(unittest.TestCase):
    def test_reports_every_demo(self):
        for file in sorted(STATIONS.glob("*.toml")):
            report = library.assess(file.read_bytes(), file.name)
            self.assertEqual(report["schema"], "weldloop-station-report/3")
            self.assertIn(f'name = "{report["name"]}"', file.read_text(encoding="utf-8"))
            by_c = run(file)
            self.assertEqual((by_c.returncode, by_c.stderr), (0, b""))
            self.assertEqual(json.loads(by_c.stdout), report)

    def test_version_is_that_of_the_headers(self):
        header = (REPOSITORY / "include/weldloop/version.hpp").read_text(encoding="utf-8")
        self.assertEqual(library.version, ".".join(re.findall(r"#define WELDLOOP_VERSION_\w+ (\d+)", header)))

    def test_refuses_in_words_with_the_place(self):
        text = (STATIONS / "gate_shop.toml").read_text(encoding="utf-8")
        wrong = text.replace("gmaw", "gnaw").replace("smaw", "snaw")
        self.assertNotEqual(wrong, text)
        for content, words in (
            (wrong, r"^mine\.toml:\d+:\d+: .*nearest: "),
            ("", r"^mine\.toml"),
            (b"\xff\xfe", r"^mine\.toml:1:"),
            (b'name = "a\0b"', r"^mine\.toml:1:"),
            (b"#" * (1024 * 1024 + 1), r"^mine\.toml: .*larger than 1048576 bytes"),
        ):
            with self.assertRaisesRegex(assess.Refused, words) as refusal:
                library.assess(content, "mine.toml")
            self.assertGreater(refusal.exception.number, 100)
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "bad.toml"
            file.write_text(wrong, encoding="utf-8")
            by_c = run(file)
            self.assertEqual((by_c.returncode, by_c.stdout), (1, b""))
            self.assertRegex(by_c.stderr.decode(), r"bad\.toml:\d+:\d+: ")
        self.assertEqual(run().returncode, 2)
        self.assertEqual(run("no_such_file.toml").returncode, 2)

    def test_null_is_no_crash(self):
        c = library._lib
        self.assertEqual(c.weldloop_has_report(None), 0)
        self.assertEqual(c.weldloop_report(None), b"")
        self.assertEqual(c.weldloop_error(None), b"out of memory")
        self.assertEqual(c.weldloop_error_number(None), 0)
        c.weldloop_release(None)
        result = c.weldloop_assess(None, 0, None)
        self.assertEqual(c.weldloop_has_report(result), 0)
        self.assertTrue(c.weldloop_error(result).startswith(b"station"))
        c.weldloop_release(result)

    def test_threads_do_not_meet(self):
        text = (STATIONS / "trailer_frame.toml").read_bytes()
        alone = library.assess(text)
        with concurrent.futures.ThreadPoolExecutor(4) as pool:
            for report in pool.map(lambda _: library.assess(text), range(8)):
                self.assertEqual(report, alone)

    def test_only_the_interface_is_seen(self):
        names = subprocess.run(["nm", "-D", "--defined-only", LIBRARY], capture_output=True, check=True, text=True)
        seen = {line.split()[-1] for line in names.stdout.splitlines() if "weldloop" in line}
        header = (REPOSITORY / "examples/c_wrapper/weldloop_c.h").read_text(encoding="utf-8")
        self.assertEqual(seen, set(re.findall(r"\b(weldloop_\w+)\(", re.sub(r"/\*.*?\*/", "", header, flags=re.S))))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
