"""The verbs of the command line: what each takes, what it runs, what it says."""
