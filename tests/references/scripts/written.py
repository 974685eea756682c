# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes a file of numbers beside this folder, used by the others."""
import json
import os


def write(name, breaks, **content):
    """`content` as JSON into ../`name`, with a new line before each of `breaks`, a pair of text and indent."""
    text = json.dumps(content)
    for before, indent in breaks:
        text = text.replace(before, '\n' + ' ' * indent + before)
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', name), 'w') as file:
        file.write(text + '\n')
