# Whether the packages of the bench have known weaknesses. What Java brings is held by the enforcer in pom.xml.

# Fails on a weakness that is high or worse in what reaches the user; a registry that keeps no list is told as a skip.
known_weaknesses() {
  local told
  if told=$(cd "$root/web" && npm audit --omit=dev --audit-level=high 2>&1); then
    echo "$told"
  elif grep -q "audit endpoint returned an error\|ENOTFOUND\|ENOAUDIT\|ECONNREFUSED" <<<"$told"; then
    echo "Skipped: the registry in use answers no questions about known weaknesses."
  else
    echo "$told" >&2
    return 1
  fi
}
