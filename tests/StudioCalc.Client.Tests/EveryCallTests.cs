using StudioCalc.Contracts;

namespace StudioCalc.Client.Tests;

public sealed class EveryCallTests
{
    public static TheoryData<string, string> Calls
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var method in Contract.Services.SelectMany(service => service.Methods))
            {
                data.Add(Contract.SubjectOf(method.Service), method.Name);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void Client_HasAMemberForTheSubjectAndAMethodForTheCall(string subject, string call)
    {
        var member = typeof(StudioCalcClient).GetProperty(subject);

        Assert.NotNull(member);
        Assert.NotNull(member.PropertyType.GetMethod(call + "Async"));
    }
}
