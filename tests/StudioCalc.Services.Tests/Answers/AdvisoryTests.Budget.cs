using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Budgets.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> BudgetPairs = new()
    {
        [AdvisoryCode.BudgetBreaks] = (() => Budget(LabnehHolds(105)), () => Budget(LabnehHolds(400))),
        [AdvisoryCode.ComponentNeverHolds] = (() => Budget(LabnehHolds(40)), () => Budget(LabnehHolds(105))),
        [AdvisoryCode.NoHurry] = (() => Budget(LabnehHolds(117)), () => Budget(LabnehHolds(118))),
        [AdvisoryCode.RefreshKeepsSafetyClock] = (
            () => Budget(_ => { }),
            () => Budget(request => request.Steps[2].Refresh = null)),
    };

    private static Action<CheckBudgetRequest> LabnehHolds(int seconds) =>
        request => request.Components[3].Item.OwnWindow = new() { Likely = new() { Seconds = seconds } };

    private static CheckBudgetResponse Budget(Action<CheckBudgetRequest> change)
    {
        var request = Examples.Budget();
        change(request);
        return Calls.Freshness.CheckBudget(request);
    }
}
