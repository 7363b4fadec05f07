"""Words that make the name of a quantity no thing that one can find."""

from __future__ import annotations

# A name that begins so, or is no more than such a word, takes no article: 'from each', 'all'.
PREPOSITIONS = frozenset(
    {
        *(
            "about",
            "above",
            "across",
            "after",
            "along",
            "among",
            "around",
            "at",
            "before",
            "behind",
        ),
        *("below", "beside", "between", "beyond", "by", "during", "for", "from", "in", "inside"),
        *("into", "near", "of", "off", "on", "onto", "out", "outside", "over", "past", "per"),
        *("since", "through", "till", "to", "towards", "under", "until", "up", "upon", "with"),
        *("within", "without"),
    }
)
VERBS = frozenset(
    {
        *("are", "can", "could", "did", "do", "does", "gave", "get", "gets", "give", "given"),
        *("gives", "goes", "got", "had", "has", "have", "is", "made", "make", "makes", "must"),
        *("need", "needs", "paid", "pay", "pays", "sell", "sells", "should", "sold", "spend"),
        *("spends", "spent", "take", "taken", "takes", "took", "was", "went", "were", "will"),
        *("would",),
    }
)
NOT_ALONE = frozenset(
    {
        *("added", "again", "all", "altogether", "available", "back", "both", "bought", "broken"),
        *("cut", "each", "eaten", "either", "every", "everything", "extra", "fewer", "finally"),
        *(
            "first",
            "full",
            "gone",
            "in",
            "kept",
            "last",
            "later",
            "leaving",
            "left",
            "less",
            "lost",
        ),
        *("missing", "more", "most", "needed", "now", "off", "on", "one", "original", "other"),
        *("over", "remaining", "saved", "short", "spare", "still", "then", "together", "two"),
        *("unused", "used"),
    }
)
