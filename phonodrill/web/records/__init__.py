"""Pages with records of students, behind the passphrase where one is set."""
