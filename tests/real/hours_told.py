"""What the cross-checks of hours tell: printed, and left where tools/test finds it for its last lines."""


def tell(build, name, lines):
    folder = build / "hours"
    folder.mkdir(exist_ok=True)
    text = "\n".join(lines)
    (folder / f"{name}.txt").write_text(text + "\n", encoding="utf-8")
    print(text)
