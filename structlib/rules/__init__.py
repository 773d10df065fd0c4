"""What a member may be asked to carry: one folder a rulebook, and the record each answers with."""
