"""How a card is built."""
