#!/usr/bin/env bash
# Runs every cross-check again and compares with the results that are kept.
#
# A topic is a folder here with requirements.txt (pinned) and `again`: a line a script, with its arguments.
# Scripts run in a copy of their folder; each must end with 0, and whatever JSON it writes must say the same
# as the kept file (see same_results.py). One virtual environment serves all topics.
set -euo pipefail
cd "$(dirname "$0")"

venv=${CROSSCHECK_VENV:-$(mktemp -d)/venv}
python=${PYTHON:-python3}
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT

topics=()
for requirements in */requirements.txt; do
    topics+=("$(dirname "$requirements")")
done
[ -x "$venv/bin/python" ] || "$python" -m venv "$venv"
requirements=()
for topic in "${topics[@]}"; do
    requirements+=(-r "$topic/requirements.txt")
done
"$venv/bin/pip" install --quiet --disable-pip-version-check "${requirements[@]}"

for topic in "${topics[@]}"; do
    if [ ! -f "$topic/again" ]; then
        echo "cross-check $topic: no file \`again\` that says what to run" >&2
        exit 1
    fi
    cp -r "$topic" "$copy/$topic"
    while read -r -a command; do
        [ ${#command[@]} -gt 0 ] || continue
        echo "cross-check $topic: ${command[*]}"
        (cd "$copy/$topic" && "$venv/bin/python" "${command[@]}")
    done < "$topic/again"
    "$venv/bin/python" same_results.py "$topic" "$copy/$topic"
done
echo "cross-checks: ${#topics[@]} topics agree with what is kept (${topics[*]})"
