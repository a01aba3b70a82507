// What an error of @grpc/grpc-js says: its code, and the typed details of its google.rpc.Status.
import { message } from "./contract.mjs";

export function refusal(error) {
  const [bytes] = error.metadata.get("grpc-status-details-bin");
  const details = bytes ? message("google.rpc.Status").deserialize(bytes).details : [];
  const detail = (name) =>
    details
      .filter((any) => any.type_url === `type.googleapis.com/${name}` || any.typeUrl === `type.googleapis.com/${name}`)
      .map((any) => message(name).deserialize(any.value))[0];
  return {
    code: error.code,
    message: error.details,
    reason: detail("google.rpc.ErrorInfo")?.reason,
    domain: detail("google.rpc.ErrorInfo")?.domain,
    fields: (detail("google.rpc.BadRequest")?.fieldViolations ?? []).map(({ field, reason }) => `${field} ${reason}`),
  };
}
