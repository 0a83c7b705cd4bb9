"""The help: pages made from the tables of parts, tools, rules, actions and keys, and What's This."""
