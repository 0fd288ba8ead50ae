# What the studio's pages say.
