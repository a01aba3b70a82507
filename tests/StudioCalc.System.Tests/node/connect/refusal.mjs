// What an error of Connect says: its code, and its typed details.
import { ConnectError } from "@connectrpc/connect";

export function refusal(error, registry) {
  const refused = ConnectError.from(error);
  const detail = (name) => refused.findDetails(registry.getMessage(name))[0];
  return {
    code: refused.code,
    message: refused.rawMessage,
    reason: detail("google.rpc.ErrorInfo")?.reason,
    domain: detail("google.rpc.ErrorInfo")?.domain,
    fields: (detail("google.rpc.BadRequest")?.fieldViolations ?? []).map(({ field, reason }) => `${field} ${reason}`),
  };
}
