"""What is typed and printed: one small file a verb; no craft and no drawing in it."""


def main() -> None:
    raise SystemExit("not built yet")
