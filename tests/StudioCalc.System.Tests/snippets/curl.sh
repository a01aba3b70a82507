host=${STUDIOCALC_HTTP:-http://127.0.0.1:8080}
curl -sS -H 'content-type: application/json' -H 'grpc-timeout: 5S' --data @docs/examples/balance-fill.json \
  "$host/v1/lightingRatio:balanceFill"
curl -sS "$host/v1/exposure:convertMark?aperture.mark=f/5.6&aperture.scale=STOP_SCALE_THIRD"
