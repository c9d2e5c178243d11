"""The binary form of translations that Qt reads, so that no tool of Qt is needed to make a release.

As src/corelib/kernel/qtranslator.cpp of Qt 5.15 and Qt 6 reads it: a magic number; a section of pairs of hash and offset, sorted; and a
section of messages, each a row of tagged texts. All numbers are big-endian.
"""

import struct
from xml.etree import ElementTree

MAGIC = bytes.fromhex("3cb86418caef9c95cd211cbf60a1bddd")
HASHES, MESSAGES = 0x42, 0x69  # sections
END, TRANSLATION, SOURCE, CONTEXT, COMMENT = 1, 3, 6, 7, 8  # tags of a message


def compiled(path):
    """The bytes of a .qm file, from a .ts file; unfinished translations are left out, so that QGIS shows the source."""
    messages, entries = b"", []
    for context in ElementTree.parse(path).iter("context"):
        name = context.findtext("name")
        for message in context.iter("message"):
            source, translation = message.findtext("source"), message.find("translation")
            if translation.get("type") is None and translation.text:
                entries.append((elf_hash(source.encode()), len(messages)))
                messages += _message(name, source, translation.text)
    hashes = b"".join(struct.pack(">II", *entry) for entry in sorted(entries))
    return MAGIC + _section(HASHES, hashes) + _section(MESSAGES, messages)


def elf_hash(octets):
    """The hash of the ELF format, of a source text followed by its comment; 1 for 0, as Qt has it."""
    value = 0
    for octet in octets:
        value = (value << 4) + octet
        high = value & 0xF0000000
        value = (value ^ (high >> 24)) & ~high & 0xFFFFFFFF
    return value or 1


def _section(tag, content):
    return struct.pack(">BI", tag, len(content)) + content


def _message(context, source, translation):
    texts = (TRANSLATION, translation.encode("utf-16-be")), (COMMENT, b""), (SOURCE, source.encode()), (CONTEXT, context.encode())
    return b"".join(struct.pack(">BI", tag, len(octets)) + octets for tag, octets in texts) + bytes([END])
