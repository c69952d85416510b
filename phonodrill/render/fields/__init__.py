"""The fields of all JSON, as types: what views write, and what the JSON Schemas are made of.

Views name these types only for the type checker; nothing here is loaded by a command.
"""
