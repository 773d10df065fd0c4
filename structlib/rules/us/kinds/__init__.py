"""Rules by kind of member, one file a topic: what each is asked, and what this rulebook answers beside its checks."""
