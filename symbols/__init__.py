"""The craft's vocabulary: what each stitch is, what it is called in which terms, and how its symbol is drawn."""
