using System.Collections.Immutable;
using NodaTime;

namespace Mastwright.Journal.Entries;

/// <summary>What an entry said before it was corrected or struck out.</summary>
/// <param name="EntryId">The entry.</param>
/// <param name="ChangedAt">When it was changed.</param>
/// <param name="Reason">Why.</param>
/// <param name="Content">The entry as it was, in the form of the JSON export.</param>
public sealed record EarlierEntry(Guid EntryId, OffsetDateTime ChangedAt, string Reason, string Content);

/// <summary>Everything in a journal.</summary>
/// <param name="Station">Name of the station.</param>
/// <param name="Entries">Entries in order of time.</param>
/// <param name="Earlier">Earlier wordings in the order they were replaced.</param>
public sealed record JournalContent(string Station, ImmutableArray<JournalEntry> Entries, ImmutableArray<EarlierEntry> Earlier);
