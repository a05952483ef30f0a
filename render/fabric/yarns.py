"""Which yarn is in hand."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.wording import key_of, listed
from motifold.render.pattern.instructions import UseYarn


def use_yarn(hook: Hook, step: UseYarn) -> None:
    """``with A``, ``change to B``, ``change to the other yarn``."""
    known = hook.shop.yarns
    if step.yarn is None:
        others = [yarn for yarn in known if yarn != hook.yarn]
        if len(others) == 1:
            hook.yarn = others[0]
        else:
            hook.complain(
                "yarn",
                step.span,
                f"the other yarn is not clear: there are {len(known)} yarns",
                f"name it: {' or '.join(others)}" if others else "define a second yarn",
                key=key_of(step.span),
            )
        return
    if step.yarn not in known:
        hook.complain(
            "yarn",
            step.span,
            f"yarn {step.yarn} is not defined",
            f"the file defines {listed(known)}" if known else f"define it: [yarn.{step.yarn}]",
            key=hash_of(step.yarn),
        )
    hook.yarn = step.yarn


def hash_of(name: str) -> int:
    """A number for a name that is the same in every run (the built-in hash is not)."""
    value = 1
    for character in name:
        value = (value * 131 + ord(character)) % 2_147_483_647
    return value or 1
