/**
 * Block or blocks, name, source, month, and five flags: source, destination, forwardable, globally reachable, reserved by protocol, each
 * T, F or - where the registry says "N/A" or nothing.
 */
export type RegistryRow = readonly [blocks: string, name: string, source: string, date: string, flags: string];

/**
 * The IANA IPv4 and IPv6 Special-Purpose Address Registries (RFC 6890, RFC 8190) as of 2026-07-18, all rows.
 *
 * A flag with a footnote for more specific exceptions stands as printed. The last three blocks are not in these registries, but are no
 * place for a device either: multicast and deprecated site-local; their months are those of their documents.
 */
export const registryRows: readonly RegistryRow[] = [
  ["0.0.0.0/8", "This network", "RFC 791 section 3.2", "1981-09", "TFFFT"],
  ["0.0.0.0/32", "This host on this network", "RFC 1122 section 3.2.1.3", "1981-09", "TFFFT"],
  ["10.0.0.0/8", "Private-Use", "RFC 1918", "1996-02", "TTTFF"],
  ["100.64.0.0/10", "Shared Address Space", "RFC 6598", "2012-04", "TTTFF"],
  ["127.0.0.0/8", "Loopback", "RFC 1122 section 3.2.1.3", "1981-09", "FFFFT"],
  ["169.254.0.0/16", "Link Local", "RFC 3927", "2005-05", "TTFFT"],
  ["172.16.0.0/12", "Private-Use", "RFC 1918", "1996-02", "TTTFF"],
  ["192.0.0.0/24", "IETF Protocol Assignments", "RFC 6890 section 2.1", "2010-01", "FFFFF"],
  ["192.0.0.0/29", "IPv4 Service Continuity Prefix", "RFC 7335", "2011-06", "TTTFF"],
  ["192.0.0.8/32", "IPv4 dummy address", "RFC 7600", "2015-03", "TFFFF"],
  ["192.0.0.9/32", "Port Control Protocol Anycast", "RFC 7723", "2015-10", "TTTTF"],
  ["192.0.0.10/32", "Traversal Using Relays around NAT Anycast", "RFC 8155", "2017-02", "TTTTF"],
  ["192.0.0.170/32, 192.0.0.171/32", "NAT64/DNS64 Discovery", "RFC 8880, RFC 7050 section 2.2", "2013-02", "FFFFT"],
  ["192.0.2.0/24", "Documentation (TEST-NET-1)", "RFC 5737", "2010-01", "FFFFF"],
  ["192.31.196.0/24", "AS112-v4", "RFC 7535", "2014-12", "TTTTF"],
  ["192.52.193.0/24", "AMT", "RFC 7450", "2014-12", "TTTTF"],
  ["192.88.99.0/24", "Deprecated (6to4 Relay Anycast)", "RFC 7526", "2001-06 to 2015-03", "-----"],
  ["192.88.99.2/32", "6a44-relay anycast address", "RFC 6751", "2012-10", "TTTFF"],
  ["192.168.0.0/16", "Private-Use", "RFC 1918", "1996-02", "TTTFF"],
  ["192.175.48.0/24", "Direct Delegation AS112 Service", "RFC 7534", "1996-01", "TTTTF"],
  ["198.18.0.0/15", "Benchmarking", "RFC 2544", "1999-03", "TTTFF"],
  ["198.51.100.0/24", "Documentation (TEST-NET-2)", "RFC 5737", "2010-01", "FFFFF"],
  ["203.0.113.0/24", "Documentation (TEST-NET-3)", "RFC 5737", "2010-01", "FFFFF"],
  ["240.0.0.0/4", "Reserved", "RFC 1112 section 4", "1989-08", "FFFFT"],
  ["255.255.255.255/32", "Limited Broadcast", "RFC 8190, RFC 919 section 7", "1984-10", "FTFFT"],

  ["::1/128", "Loopback Address", "RFC 4291", "2006-02", "FFFFT"],
  ["::/128", "Unspecified Address", "RFC 4291", "2006-02", "TFFFT"],
  ["::ffff:0:0/96", "IPv4-mapped Address", "RFC 4291", "2006-02", "FFFFT"],
  ["64:ff9b::/96", "IPv4-IPv6 Translat.", "RFC 6052", "2010-10", "TTTTF"],
  ["64:ff9b:1::/48", "IPv4-IPv6 Translat.", "RFC 8215", "2017-06", "TTTFF"],
  ["100::/64", "Discard-Only Address Block", "RFC 6666", "2012-06", "TTTFF"],
  ["100:0:0:1::/64", "Dummy IPv6 Prefix", "RFC 9780", "2025-04", "TFFFF"],
  ["2001::/23", "IETF Protocol Assignments", "RFC 2928", "2000-09", "FFFFF"],
  ["2001::/32", "TEREDO", "RFC 4380, RFC 8190", "2006-01", "TTT-F"],
  ["2001:1::1/128", "Port Control Protocol Anycast", "RFC 7723", "2015-10", "TTTTF"],
  ["2001:1::2/128", "Traversal Using Relays around NAT Anycast", "RFC 8155", "2017-02", "TTTTF"],
  ["2001:1::3/128", "DNS-SD Service Registration Protocol Anycast", "RFC 9665", "2024-04", "TTTTF"],
  ["2001:2::/48", "Benchmarking", "RFC 5180 (erratum 1752)", "2008-04", "TTTFF"],
  ["2001:3::/32", "AMT", "RFC 7450", "2014-12", "TTTTF"],
  ["2001:4:112::/48", "AS112-v6", "RFC 7535", "2014-12", "TTTTF"],
  ["2001:10::/28", "Deprecated (previously ORCHID)", "RFC 4843", "2007-03 to 2014-03", "-----"],
  ["2001:20::/28", "ORCHIDv2", "RFC 7343", "2014-07", "TTTTF"],
  ["2001:30::/28", "Drone Remote ID Protocol Entity Tags (DETs) Prefix", "RFC 9374", "2022-12", "TTTTF"],
  ["2001:db8::/32", "Documentation", "RFC 3849", "2004-07", "FFFFF"],
  ["2002::/16", "6to4", "RFC 3056", "2001-02", "TTT-F"],
  ["2620:4f:8000::/48", "Direct Delegation AS112 Service", "RFC 7534", "2011-05", "TTTTF"],
  ["3fff::/20", "Documentation", "RFC 9637", "2024-07", "FFFFF"],
  ["5f00::/16", "Segment Routing (SRv6) SIDs", "RFC 9602", "2024-04", "TTTFF"],
  ["fc00::/7", "Unique-Local", "RFC 4193, RFC 8190", "2005-10", "TTTFF"],
  ["fe80::/10", "Link-Local Unicast", "RFC 4291", "2006-02", "TTFFT"],

  ["224.0.0.0/4", "Multicast", "RFC 5771", "2010-03", "-----"],
  ["fec0::/10", "Deprecated (Site-Local Unicast)", "RFC 3879", "2004-09", "-----"],
  ["ff00::/8", "Multicast", "RFC 4291", "2006-02", "-----"],
];
