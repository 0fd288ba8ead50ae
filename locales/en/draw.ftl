# What the drawings say.
