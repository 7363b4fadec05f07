"""One and many, by a table: British dictionaries, from memory."""

import pytest

from typeset.quantities.irregular_nouns import IRREGULAR, SAME
from typeset.quantities.nouns import counted, plural, singular

PAIRS = [
    ("tern", "terns"),
    ("gull", "gulls"),
    ("ferry", "ferries"),
    ("chandlery", "chandleries"),
    ("quay", "quays"),
    ("buoy", "buoys"),
    ("dinghy", "dinghies"),
    ("boy", "boys"),
    ("penny", "pennies"),
    ("sky", "skies"),
    ("box", "boxes"),
    ("bench", "benches"),
    ("brush", "brushes"),
    ("glass", "glasses"),
    ("compass", "compasses"),
    ("bus", "buses"),
    ("horse", "horses"),
    ("house", "houses"),
    ("vase", "vases"),
    ("prize", "prizes"),
    ("sleeve", "sleeves"),
    ("wave", "waves"),
    ("glove", "gloves"),
    ("loaf", "loaves"),
    ("half", "halves"),
    ("roof", "roofs"),
    ("reef", "reefs"),
    ("cliff", "cliffs"),
    ("wharf", "wharves"),
    ("knife", "knives"),
    ("child", "children"),
    ("grandchild", "grandchildren"),
    ("person", "people"),
    ("ferryman", "ferrymen"),
    ("lifeboatwoman", "lifeboatwomen"),
    ("human", "humans"),
    ("goose", "geese"),
    ("foot", "feet"),
    ("potato", "potatoes"),
    ("cargo", "cargoes"),
    ("photo", "photos"),
    ("flamingo", "flamingos"),
    ("kilo", "kilos"),
    ("canoe", "canoes"),
    ("shoe", "shoes"),
    ("pie", "pies"),
    ("magpie", "magpies"),
    ("headache", "headaches"),
    ("axe", "axes"),
    ("walrus", "walruses"),
    ("octopus", "octopuses"),
    ("jellyfish", "jellyfish"),
    ("sheep", "sheep"),
    ("mackerel", "mackerel"),
    ("hovercraft", "hovercraft"),
    ("crab", "crabs"),
    ("key", "keys"),
    ("day", "days"),
    ("taxi", "taxis"),
    ("passer-by", "passers-by"),
    ("sea-gull", "sea-gulls"),
    ("tea-loaf", "tea-loaves"),
    ("Loaf", "Loaves"),
    ("pot of paint", "pots of paint"),
    ("loaf of bread", "loaves of bread"),
    ("model boat", "model boats"),
    ("box of model boats", "boxes of model boats"),
    ("child with a kite", "children with a kite"),
    ("word a minute", "words a minute"),
    ("mile per hour", "miles per hour"),
]


@pytest.mark.parametrize(("one", "many"), PAIRS)
def test_one_and_many(one: str, many: str) -> None:
    assert plural(one) == many
    assert singular(many) == one


@pytest.mark.parametrize("one", sorted(set(IRREGULAR) - {"axis"} | SAME))
def test_every_listed_noun_comes_back_from_its_plural(one: str) -> None:
    # 'axes' is read as several of 'axe': of the two the likelier in a lesson on ropes and wood.
    assert singular(plural(one)) == one


def test_counted_things_are_singular_after_one() -> None:
    assert counted("loaf", True) == counted("loaves", False)
    assert (counted("sheep", True).singular, counted("sheep", False).plural) == ("sheep", "sheep")


def test_own_nouns_come_before_the_rules() -> None:
    own = {"kipper": "kippern", "man o' war": "men o' war"}
    assert plural("smoked kipper", own) == "smoked kippern"
    assert singular("kippern", own) == "kipper"
    assert plural("man o' war", own) == "men o' war"
    assert singular("men o' war", own) == "man o' war"
