"""The text of every scalar of some YAML snippets, as PyYAML's BaseLoader gives it (no types, only what was typed).

Writes source-texts.json beside itself. Run with a Python that has PyYAML: python3 generate.py
"""

import json
from pathlib import Path

import yaml

snippets = [
    "tag: 012\nspeed: 1486 r/min\n",
    "a: 0.10\nb: 1e3\nc: 0x1F\nd: +5\ne: .5\nf: 12345678901234567890\n",
    "a: yes\nb: No\nc: true\nd: null\ne: ~\nf: unknown\n",
    "a: 'it''s'\nb: \"line\\tand \\u00b5\"\nc: ''\n",
    "a: one\n  two\n\n  three\n",
    "a: 'one\n  two\n\n  three'\n",
    "a: \"one\n  two \\\n  three\"\n",
    "a: |\n  one\n   two\n\n  three\n",
    "a: >\n  one\n  two\n\n  three\n",
    "a: |-\n  one\n\n\nb: |+\n  two\n\nc: x\n",
    "a: |2\n    two\n   one\n",
    "list:\n- one\n- - nested\n  - more\n-\n  a: 1\n",
    "list:\n  - one   # a comment\n  # a comment of its own\n\n  - two#three\n",
    "{a: 1, b: [x, 'y', {c: z}], \"d e\": f}\n",
    "a: {b: 1,\n\n  # a comment\n  c: 2}\n",
    "a: -5\nb: '- 5'\n",
    "P-301/DE: x\n'quoted: key': y\n12.5: z\n",
    "a: http://x.y/z#w\nb: 10:30\nc: a:b\n",
    "a: 4.5 mm/s rms 10-1000 Hz\nb: '±10 %'\nc: ±10 %\n",
    "a: [4.5 mm/s rms, 7.1 mm/s rms]\n",
    "# first\n---\na: 1\n...\n",
    "just a text\n",
    "- a\n- b: 1\n  c: 2\n- []\n- {}\n",
    "a:\n  b:\n    c: d\n   \n  # x\n  e: f\n",
]

here = Path(__file__).resolve().parent
cases = [{"yaml": text, "texts": yaml.load(text, Loader=yaml.BaseLoader)} for text in snippets]
result = {"madeBy": f"PyYAML {yaml.__version__}, BaseLoader", "cases": cases}
(here / "source-texts.json").write_text(json.dumps(result, indent=1, ensure_ascii=False) + "\n")
