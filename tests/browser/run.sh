#!/usr/bin/env bash
# Looks at every page in a real browser: installs Debian's Chromium and Firefox, the PDF and XML tools and the pinned
# packages of package-lock.json where they are missing, then runs tests/browser/main.rs with all of it.
set -euo pipefail
cd "$(dirname "$0")"

missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v firefox-esr >/dev/null || missing+=(firefox-esr)
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
command -v pdftotext >/dev/null || missing+=(poppler-utils)
command -v xmllint >/dev/null || missing+=(libxml2-utils)
if [ "${#missing[@]}" -gt 0 ]; then
    sudo=""
    [ "$(id -u)" -eq 0 ] || sudo=sudo
    $sudo apt-get update -qq
    DEBIAN_FRONTEND=noninteractive $sudo apt-get install -y -qq --no-install-recommends \
        "${missing[@]}" fonts-dejavu-core fonts-liberation >/dev/null
fi
npm ci --no-audit --no-fund --silent

cd ../..
# Here nothing may be skipped.
STERNKNEE_BROWSER=required cargo test --test browser -- --nocapture
