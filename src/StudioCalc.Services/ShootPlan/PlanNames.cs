using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Checks the names by which the parts of a plan point at one another.</summary>
internal static class PlanNames
{
    public static void Check(RequestContext context, PlanShootRequest request, FieldPath root)
    {
        var setupsPath = root[PlanShootRequest.SetupsFieldNumber];
        var setups = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < request.Setups.Count; i++)
        {
            if (!setups.Add(request.Setups[i].Name))
            {
                Refuse(setupsPath.At(i)[PlanSetup.NameFieldNumber], "Another setup has this name.");
            }
        }

        var inDay = request.Day.Shots.Select(shot => shot.Name).ToHashSet(StringComparer.Ordinal);
        var shots = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < request.Shots.Count; i++)
        {
            var (shot, path) = (request.Shots[i], root[PlanShootRequest.ShotsFieldNumber].At(i));
            if (!inDay.Contains(shot.Shot))
            {
                Refuse(path[PlanShot.ShotFieldNumber], "The day has no shot of this name.");
            }
            else if (!shots.Add(shot.Shot))
            {
                Refuse(path[PlanShot.ShotFieldNumber], "This shot stands in the list already.");
            }

            if (shot.HasSetup && !setups.Contains(shot.Setup))
            {
                Refuse(path[PlanShot.SetupFieldNumber], "There is no setup of this name.");
            }

            if (shot.HasFocusErrorMm && shot.Focus is null)
            {
                Refuse(path[PlanShot.FocusErrorMmFieldNumber], "Needs `focus`.");
            }
        }

        void Refuse(FieldPath field, string description) => context.Violations.Add(field.ToString(), RefusalReason.Conflict, description);
    }
}
