#!/bin/bash
# Runs every curl of hosting.md against a service on free ports. Needs a build: dotnet build src/StudioCalc.Host
set -euo pipefail
cd "$(dirname "$0")/.."
host=$(ls -t src/StudioCalc.Host/bin/*/net10.0/StudioCalc.Host.dll | head -1)
work=$(mktemp -d)
dotnet "$host" --StudioCalc:Listen:GrpcPort=0 --StudioCalc:Listen:HttpPort=0 --StudioCalc:Listen:ManagementPort=0 > "$work/log" &
service=$!
trap 'kill $service; wait $service; rm -r "$work"' EXIT
until grep -q 'Ready:' "$work/log"; do
  kill -0 $service
  sleep 0.1
done
port() { grep -o "$1 on http://127.0.0.1:[0-9]*" "$work/log" | grep -o '[0-9]*$'; }
sed -e "s#127.0.0.1:8080#127.0.0.1:$(port gRPC-Web)#; s#127.0.0.1:8082#127.0.0.1:$(port health)#" docs/hosting.md |
  awk '/^```sh$/ { inside = 1; next } /^```$/ { inside = 0; next } inside { print; if (!/\\$/) print "echo" }' > "$work/examples.sh"
bash -euxo pipefail "$work/examples.sh"
