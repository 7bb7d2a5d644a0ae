"""Reads what the program wrote with Python's own libraries and prints it as JSON.

    read_back.py csv FILE     rows of an RFC 4180 file
    read_back.py qti FILE     items of a QTI 2.1 or 3.0 package, in the order of its test
    read_back.py zip FILE     of every file of an archive its name, text, day and method
    read_back.py html FILE    the text of a page; fails when its elements do not close in order
"""

import csv
import html.parser
import json
import re
import sys
import xml.etree.ElementTree as ElementTree
import zipfile


def read_csv(path):
    with open(path, newline="", encoding="utf-8") as file:
        return list(csv.reader(file, strict=True))


def plain(name):
    """A name of either edition without namespace, prefix, dashes and capitals."""
    return re.sub(r"^qti-", "", name.split("}")[-1]).replace("-", "").lower()


def first(node, name):
    return next((child for child in node.iter() if plain(child.tag) == name), None)


def text_of(node):
    return "".join(node.itertext())


def read_item(archive, path):
    item = ElementTree.fromstring(archive.read(path))
    body = first(item, "itembody")
    response = first(first(item, "responsedeclaration"), "correctresponse")
    bounds = [float(text_of(n)) for n in item.iter() if plain(n.tag) in ("gte", "lte")]
    image = first(body, "img")
    folder = path.rsplit("/", 1)[0]
    figure = None
    if image is not None:
        figure = re.sub(r"[^/]+/\.\./", "", folder + "/" + image.attrib["src"])
        archive.read(figure)  # raises when the package does not hold it
    return {
        "paragraphs": [text_of(node) for node in body if plain(node.tag) == "p"],
        "choices": [text_of(node) for node in body.iter() if plain(node.tag) == "simplechoice"],
        "correct": [text_of(node) for node in response],
        "bounds": bounds[:2],  # of the right answer
        "branches": len([n for n in item.iter() if plain(n.tag) == "responseelseif"]),
        "feedbacks": len([n for n in item.iter() if plain(n.tag) == "modalfeedback"]),
        "figure": figure,
        "alt": image.attrib["alt"] if image is not None else None,
        "language": item.attrib.get("{http://www.w3.org/XML/1998/namespace}lang"),
        "title": item.attrib["title"],
        "most": next(float(text_of(n)) for n in item.iter()
                     if plain(n.tag) == "outcomedeclaration" and n.attrib["identifier"] == "MAXSCORE"),
        # Of all that is said after an answer, how often the solution.
        "solutions": sum(text_of(n).count("The answer: ") for n in item.iter()
                         if plain(n.tag) == "modalfeedback"),
    }


def read_qti(path):
    with zipfile.ZipFile(path) as archive:
        assert archive.testzip() is None
        manifest = ElementTree.fromstring(archive.read("imsmanifest.xml"))
        listed = {node.attrib["href"] for node in manifest.iter() if plain(node.tag) == "file"}
        assert listed <= set(archive.namelist()), listed - set(archive.namelist())
        test = ElementTree.fromstring(archive.read("test.xml"))
        references = [n for n in test.iter() if plain(n.tag) == "assessmentitemref"]
        return [read_item(archive, node.attrib["href"]) for node in references]


def read_zip(path):
    with zipfile.ZipFile(path) as archive:
        assert archive.testzip() is None  # compares checksums
        return [{"name": one.filename, "text": archive.read(one).decode("latin-1"),
                 "day": one.date_time[:3], "stored": one.compress_type == zipfile.ZIP_STORED}
                for one in archive.infolist()]


class Page(html.parser.HTMLParser):
    VOID = {"meta", "br", "img", "link"}

    def __init__(self):
        super().__init__()
        self.open = []
        self.text = []

    def handle_starttag(self, tag, attributes):
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open and self.open.pop() == tag, f"</{tag}> closes something else"

    def handle_data(self, data):
        if not self.open or self.open[-1] not in ("style", "script"):
            self.text.append(data)
        assert "script" not in self.open


def read_html(path):
    page = Page()
    with open(path, encoding="utf-8") as file:
        page.feed(file.read())
    page.close()
    assert not page.open, page.open
    return "".join(page.text)


if __name__ == "__main__":
    readers = {"csv": read_csv, "qti": read_qti, "zip": read_zip, "html": read_html}
    json.dump(readers[sys.argv[1]](sys.argv[2]), sys.stdout)
