"""What a tagged PDF lacks of a readable structure, a line for each fault: pdf_structure.py FILE

Looks at what qpdf unpacks: every figure has words, everything that is painted belongs to an element or
is an artifact (ISO 14289-1:2014, 7.1 and 7.3), the metadata name the title. Prints the number of
figures, then the faults."""

import re
import subprocess
import sys

PAINTS = {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "Tj", "TJ", "'", '"', "Do", "sh", "EI"}
TOKEN = re.compile(rb"\((?:\\.|[^\\()])*\)|<<|>>|<[0-9A-Fa-f\s]*>|\[|\]|/[^\s/<>\[\]()]*|[^\s/<>\[\]()]+",
                   re.DOTALL)


def painted_outside(content):
    """How often something is painted outside of all marked content."""
    depth = outside = 0
    for token in TOKEN.findall(content):
        word = token.decode("latin-1")
        if word in ("BMC", "BDC"):
            depth += 1
        elif word == "EMC":
            depth -= 1
        elif word in PAINTS and depth == 0:
            outside += 1
    return outside + (0 if depth == 0 else 1000)


def faults_of(plain):
    figures = re.findall(rb"<<[^<>]*?/S /Figure.*?>>", plain, re.DOTALL)
    for figure in figures:
        if b"/Alt " not in figure:
            yield "a figure without words"
    contents = re.findall(rb"%% Contents for page (\d+)\n.*?\nstream\n(.*?)\nendstream", plain,
                          re.DOTALL)
    if not contents:
        yield "no page"
    for number, content in contents:
        if outside := painted_outside(content):
            yield f"page {number.decode()}: {outside} paintings outside of the structure"
    for needed in (b"<dc:title>", b"/Marked true", b"/Lang (en)",
                   b"/DisplayDocTitle true"):
        if needed not in plain:
            yield f"no {needed.decode()}"


def main():
    plain = subprocess.run(["qpdf", "--qdf", "--object-streams=disable", sys.argv[1], "-"],
                           check=True, capture_output=True).stdout
    print(len(re.findall(rb"/S /Figure", plain)), "figures")
    for fault in faults_of(plain):
        print(fault)


if __name__ == "__main__":
    main()
