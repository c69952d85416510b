"""The version of the package, read by the build as well."""

VERSION = "0.1.0"
