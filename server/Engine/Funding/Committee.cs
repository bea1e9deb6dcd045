namespace FarmPortfolio.Engine.Funding;

/// <summary>How a member voted on the order as a whole.</summary>
public enum Vote
{
    /// <summary>Did not vote.</summary>
    None,

    /// <summary>For.</summary>
    For,

    /// <summary>Against.</summary>
    Against,

    /// <summary>Abstained.</summary>
    Abstained,
}

/// <summary>An interest that a member declared.</summary>
/// <param name="FarmId">The farm it concerns; null = a supplier, told in words.</param>
/// <param name="Relation">owner, kin, employer, creditor, seller, paid adviser.</param>
public sealed record Interest(string? FarmId, string Relation);

/// <summary>A member of the committee, by a key; the name is a remark.</summary>
/// <param name="Key">Key.</param>
/// <param name="Present">Whether present at the decision.</param>
/// <param name="Vote">Vote on the order.</param>
/// <param name="Interests">Interests declared.</param>
public sealed record CommitteeMember(string Key, bool Present, Vote Vote, IReadOnlyList<Interest> Interests);

/// <summary>The votes that count for one farm: those of members present who declared no interest in it.</summary>
/// <param name="FarmId">Farm.</param>
/// <param name="Voters">Members present and not recused.</param>
/// <param name="For">For.</param>
/// <param name="Against">Against.</param>
/// <param name="Recused">Keys of the members present who left the room for it.</param>
public sealed record Ballot(string FarmId, int Voters, int For, int Against, IReadOnlyList<string> Recused)
{
    /// <summary>Counts the votes for a farm.</summary>
    /// <param name="committee">The committee.</param>
    /// <param name="farmId">Farm.</param>
    /// <returns>The ballot.</returns>
    public static Ballot Of(IReadOnlyList<CommitteeMember> committee, string farmId)
    {
        var present = committee.Where(m => m.Present).ToList();
        var voters = present.Where(m => m.Interests.All(i => i.FarmId != farmId)).ToList();
        return new(farmId, voters.Count, voters.Count(v => v.Vote == Vote.For), voters.Count(v => v.Vote == Vote.Against), [.. present.Except(voters).Select(m => m.Key)]);
    }

    /// <summary>Whether a round may be closed on these votes: a quorum not recused and more for than against, for every farm that is to be funded or set aside.</summary>
    /// <param name="round">The round.</param>
    /// <param name="farms">Farms with their names in words.</param>
    /// <returns>What stands against it; none = it may.</returns>
    public static IReadOnlyList<Fault> Check(FundingRoundFacts round, IReadOnlyList<(string FarmId, string Name)> farms)
    {
        var present = round.Committee.Count(m => m.Present);
        if (present < round.Quorum)
        {
            return [new("NO_QUORUM", "committee", $"{present} of the {round.Quorum} members that a decision needs were present.", "Enter the committee and who was present; a decision is made by them, not by this program.")];
        }

        var faults = new List<Fault>();
        foreach (var (farm, name) in farms)
        {
            var ballot = Of(round.Committee, farm);
            if (ballot.Voters < round.Quorum)
            {
                faults.Add(new("NO_QUORUM", "committee", $"For {name} {ballot.Voters} members stay in the room, {round.Quorum} are needed: {ballot.Recused.Count} declared an interest.", "Decide with more members present, or leave the farm's houses out with that reason."));
            }
            else if (ballot.For <= ballot.Against)
            {
                faults.Add(new("NOT_CARRIED", "committee", $"For {name} the votes that count are {ballot.For} for and {ballot.Against} against.", "Enter the votes; the order is carried where more are for it than against."));
            }
        }

        return faults;
    }
}
