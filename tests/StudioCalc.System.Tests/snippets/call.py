import json
import os

import grpc
from google.protobuf import descriptor_pb2, json_format, message_factory

with open("artifacts/studiocalc.binpb", "rb") as file:
    messages = message_factory.GetMessages(descriptor_pb2.FileDescriptorSet.FromString(file.read()).file)

channel = grpc.insecure_channel(os.environ.get("STUDIOCALC_GRPC", "127.0.0.1:8081"))
balance_fill = channel.unary_unary(
    "/studiocalc.v1.LightingRatioService/BalanceFill",
    request_serializer=lambda message: message.SerializeToString(),
    response_deserializer=messages["studiocalc.v1.BalanceFillResponse"].FromString,
)

with open("docs/examples/balance-fill.json") as file:
    request = json_format.ParseDict(json.load(file), messages["studiocalc.v1.BalanceFillRequest"]())

answer = balance_fill(request, timeout=5)
for way in json_format.MessageToDict(answer)["ways"]:
    solution = way["solution"]
    print(way["variable"], solution["aperture"]["mark"], solution["shutterSpeed"]["mark"])

try:
    request.back_over_fill_stops = 100
    balance_fill(request, timeout=5)
except grpc.RpcError as error:
    details = dict(error.trailing_metadata())["grpc-status-details-bin"]
    for any_detail in messages["google.rpc.Status"].FromString(details).details:
        print(messages[any_detail.type_url.split("/")[1]].FromString(any_detail.value))
