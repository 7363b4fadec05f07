"""One message a family: read who gets one, write it, and send it or leave it as a draft.

Nothing here knows how a PDF is made: packs come as bytes.
"""
