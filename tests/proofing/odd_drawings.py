"""Drawings as nobody of sound mind writes them, for the reader of pages: each an operation or
a few (ISO 32000-1, annex A), good, unusual or broken, to stand among others."""

GOOD = [
    *("/P gs", "0 0 1 rg", "1 0 0 0 k", "0.2 .3 -.4 rg", "+5 0 0 rg", "0.5 G 3 w"),
    *("/Pattern cs /Q scn", "0 0 0 0 K", "[3 2] 0 d", "[] 0 d", "5 J 3 j 10 M"),
    *("1 0 0 1 10 20 cm", ".5 0 0 .5 0 0 cm", "0 1 -1 0 300 300 cm", "1 0 .3 1 0 0 cm"),
    *("-1 0 0 1 300 0 cm", "1 0 0 -1 0 300 cm", "q q q", "Q", "W n", "n 0 0 m"),
    *("n 10 10 m 50 50 l 60 20 l S", "n 10 10 m 20 30 40 50 60 10 c h f"),
    *("n 10 10 20 30 re 50 50 9 9 re B", "n 10 10 m 30 30 l 40 40 m 90 90 l S"),
    *("n 10 10 m 20 30 40 50 v 5 5 9 9 y h B*", "2 Tr", "1.5 Tc", "3 Tw", "90 Tz", "4 Ts"),
    *("/Span BMC", "EMC", "/P <</MCID 7>> BDC n 1 1 m 9 9 l S", "/P /MC0 BDC"),
    *("/P <</MCID 9>> BDC S EMC", "/P <</MCID 9>> BDC (kites) Tj EMC", "T*", "d0"),
    *("[(a) -300 (b)] TJ", r"(\101\(b\)\n\\ \222) Tj", "(no\u00a0break) Tj", "5 -20 TD (there) Tj"),
    *("-12 0 0 12 50 400 Tm (ab) Tj", "1 0 0 -1 50 400 Tm (ab) Tj", "0 1 -1 0 50 40 Tm (ab) Tj"),
    *("/F1 -12 Tf (ab) Tj", "/F1 0 Tf (ab) Tj", "/F9 12 Tf (unknown) Tj", "<</A [1 2]>> w"),
]
BROKEN = [
    *("S", "(unclosed", "% a comment", "<41> Tj", "(a) '", '1 2 (b) "', "[(a) (b] TJ", "] w"),
    *("true 3 w", "null w", "1 2 3 4 5 w", "w", "foo", "1e5 w", "--3 w", "3.4.5 w", "\x0b 3 w"),
    *("99999999999999999999999999 w", "/X Do", "<</A>> w", ">> w", "<</A [1 2 <</B 3>>]>> w"),
    *("BI /W 1 /H 1 /BPC 8 /CS /G ID \x00 EI", "(a\\\nb) Tj", "((nested)) Tj", "/A#20B gs"),
    *("999999999999999999999999999999 0 0 1 0 0 Tm (far) Tj", "\\ 3 w", "{ 3 } w", "3 w%"),
]
