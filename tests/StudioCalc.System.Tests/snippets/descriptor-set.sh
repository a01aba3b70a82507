mkdir -p artifacts
buf build protos -o artifacts/studiocalc.binpb
