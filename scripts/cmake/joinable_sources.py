"""Says which sources of a target may be compiled as one: joinable_sources.py [--overload] SOURCE...

Called in the target's folder. Prints one line for each source: the number of its group, or - for a
source that stays alone. Two sources are never in one group whose unnamed namespaces declare the same
name, unless it is, with --overload, that of functions that take other types: not for tests, which
call them with bare braces. A source stays alone that defines a macro, or whose own names hide those
of a header there.
"""

import re
import sys
from pathlib import Path

MOST_IN_GROUP = 32

UNNAMED = re.compile(r"^namespace \{$(.*?)^\} // namespace$", re.DOTALL | re.MULTILINE)
TYPE = re.compile(r"(?:struct|class|enum class|using) (\w+)(?: \{| : | =|$)")
CONSTANT = re.compile(r"(?:inline )?(?:constexpr|const) [^=({;]*?(\w+)(?: =|\{|\[|;)")
FUNCTION = re.compile(r"[^(]*?[ &*](\w+)\(")
OVERLOADED = re.compile(r"^(?!template|using|struct|class|enum)[a-z][^(){};=]*?[ &*](\w+)\(([^(){};]*)\)"
                        r"(?: const| noexcept)* \{", re.IGNORECASE | re.MULTILINE)
TAKEN_OVER = re.compile(r"^using (?!namespace)[\w:]+::(\w+);$", re.MULTILINE)


def declared(text, *forms):
    """The names that are declared where nothing is indented: in namespaces (.clang-format)."""
    lines = [line for line in text.splitlines() if line and line[0] not in " }/#"]
    return {found[1] for line in lines for form in forms if (found := form.match(line))}


def own_text(text):
    return "\n".join(UNNAMED.findall(text))


def own_names(text):
    """With the constants of functions, which would shadow a neighbour's."""
    return (declared(own_text(text), TYPE, CONSTANT, FUNCTION) |
            set(re.findall(r"constexpr [^=({;]*?(k[A-Z]\w*)(?: =|\{|\[)", text)))


def types_of(parameters):
    """Of `const scene::Point& at, double` the types alone, as the namespace knows them."""
    def type_of(one):
        named = re.sub(r"\w+::", "", " ".join(one.split()))
        return re.sub(r"[ &*]\w+$", lambda end: end[0][0], named).strip()

    return tuple(type_of(one) for one in parameters.split(","))


def by_signature(text, overload):
    """The own names, each with the types it takes where all that bear it are functions."""
    if not overload:
        return dict.fromkeys(own_names(text))
    functions = {}
    for found in OVERLOADED.finditer(own_text(text)):
        functions.setdefault(found[1], set()).add(types_of(found[2]))
    return {name: functions.get(name) for name in own_names(text)}


def clash(taken, names):
    return any(name in taken and (taken[name] is None or types is None or taken[name] & types)
               for name, types in names.items())


def with_names(taken, names):
    merged = dict(taken)
    for name, types in names.items():
        merged[name] = types if name not in taken or types is None else taken[name] | types
    return merged


def groups_of(texts, public, overload):
    groups = []  # of the names that are taken, and how many sources there are
    for text in texts:
        hidden = public & (own_names(text) | set(TAKEN_OVER.findall(text)))
        if hidden or re.search(r"^#define ", text, re.MULTILINE):
            yield None
            continue
        names = by_signature(text, overload)
        for number, (taken, count) in enumerate(groups):
            if count < MOST_IN_GROUP and not clash(taken, names):
                groups[number] = with_names(taken, names), count + 1
                yield number
                break
        else:
            groups.append((names, 1))
            yield len(groups) - 1


if __name__ == "__main__":
    public = set()
    for header in Path().rglob("*.h"):
        public |= declared(header.read_text(encoding="utf-8"), TYPE, CONSTANT, FUNCTION)
    overload = sys.argv[1] == "--overload"
    names = sys.argv[2:] if overload else sys.argv[1:]
    texts = [Path(name).read_text(encoding="utf-8") for name in names]
    for group in groups_of(texts, public, overload):
        print("-" if group is None else group)
