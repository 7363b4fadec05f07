"""From a folder of content to proofed files in place: the whole way, in order."""
