"""What the jsonschema library for Python says of our schema and of the documents that our reader is tried on.

Reads documents.json, writes verdicts.json beside it. Run with a Python that has jsonschema: python3 generate.py
"""

import hashlib
import json
from importlib.metadata import version
from pathlib import Path

from jsonschema import Draft202012Validator
from jsonschema.exceptions import SchemaError

here = Path(__file__).resolve().parent
text = (here / "documents.json").read_bytes()
content = json.loads(text)

try:
    Draft202012Validator.check_schema(content["schema"])
    valid = True
except SchemaError:
    valid = False

validator = Draft202012Validator(content["schema"])
result = {
    "madeBy": f"jsonschema {version('jsonschema')}, draft 2020-12",
    "of": hashlib.sha256(text).hexdigest(),
    "schemaIsValid": valid,
    "accepted": {name: validator.is_valid(document) for name, document in content["documents"].items()},
}
(here / "verdicts.json").write_text(json.dumps(result, indent=1, ensure_ascii=False) + "\n")
