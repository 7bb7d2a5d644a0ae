"""Writes the manual page from what the program itself says: man_page.py PROGRAM OUT.gz"""

import gzip
import subprocess
import sys


def said_by(program, *words):
    return subprocess.run([program, *words], check=True, capture_output=True, text=True).stdout


def escaped(line):
    line = line.replace("\\", "\\e").replace("-", "\\-")
    return "\\&" + line if line[:1] in (".", "'") else line


def verbatim(text):
    return ".nf\n" + "\n".join(map(escaped, text.strip("\n").splitlines())) + "\n.fi\n"


def verbs_of(overview):
    """The words after `steelyard` in the overview's lines that name a verb."""
    words = [line.split()[1] for line in overview.splitlines()
             if line.startswith("  steelyard ") and len(line.split()) > 2]
    return list(dict.fromkeys(word for word in words if word.islower()))


def page(program):
    overview = said_by(program, "--help")
    version = said_by(program, "--version").split()[-1]
    text = f'.TH STEELYARD 1 "" "Steelyard {version}" "User Commands"\n'
    text += ".SH NAME\nsteelyard \\- levers, moment arms and torque, drawn, solved and asked\n"
    text += ".SH SYNOPSIS\n" + verbatim("steelyard [FILE]\nsteelyard VERB [OPTION]...")
    text += ".SH DESCRIPTION\n" + verbatim(overview)
    text += ".SH VERBS\n"
    for verb in verbs_of(overview):
        try:
            help_text = said_by(program, verb, "--help")
        except subprocess.CalledProcessError:
            continue  # a word of the examples that is no verb
        text += f".SS {verb}\n" + verbatim(help_text)
    text += (".SH EXIT STATUS\n" + verbatim("0  done\n1  failed\n2  bad input: what was typed, or "
                                             "a file that was named"))
    text += ".SH FILES\n.I ~/.local/share/steelyard\n.br\nThe record of what was answered; "
    text += ".I $XDG_DATA_HOME/steelyard\nwhere that is set.\n"
    return text


if __name__ == "__main__":
    with open(sys.argv[2], "wb") as file, gzip.GzipFile("", "wb", 9, file, mtime=0) as out:
        out.write(page(sys.argv[1]).encode())
