#!/usr/bin/python3
"""Check job files against a JSON Schema with python3-jsonschema.

    schema_check.py SCHEMA FILE...

Prints one JSON object a line: first {"schema": fault or null} for the schema
itself against its draft, then {"file", "faults": [...]} for each file.
"""
import json
import sys

import jsonschema
import yaml


def main(schema_path, *paths):
    with open(schema_path, encoding="utf-8") as f:
        schema = json.load(f)
    draft = jsonschema.validators.validator_for(schema)
    try:
        draft.check_schema(schema)
        print(json.dumps({"schema": None, "draft": draft.META_SCHEMA["$id"]}))
    except jsonschema.SchemaError as error:
        print(json.dumps({"schema": error.message}))
    for path in paths:
        with open(path, encoding="utf-8") as f:
            job = yaml.safe_load(f)
        faults = [e.message for e in draft(schema).iter_errors(job)]
        print(json.dumps({"file": path, "faults": faults}))


if __name__ == "__main__":
    main(*sys.argv[1:])
